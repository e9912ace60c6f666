// The style of the page beyond that of a report.
export const frameStyle = "";
