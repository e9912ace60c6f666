// The ratio of a circle's circumference to its diameter, written out because the language promises no digits of its own.

// oxlint-disable-next-line oxc/approx-constant -- the ban on inexact Math covers its constants too
export const PI = 3.141592653589793;
