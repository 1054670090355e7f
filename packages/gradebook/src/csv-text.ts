/**
 * CSV injection, OWASP: the first character decides whether a spreadsheet runs a cell. Texts a person has written go
 * through this; figures do not, so that a negative one stays a figure.
 */
export const harmless = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);
