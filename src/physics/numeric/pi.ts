// The ratio of a circle's circumference to its diameter, as a literal because the language does not specify its digits.

// oxlint-disable-next-line oxc/approx-constant -- the ban on inexact Math covers its constants too
export const PI = 3.141592653589793;
