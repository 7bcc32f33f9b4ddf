/**
 * What the workbook's page may load and run: what it was served with, and nothing else. The page
 * carries it in a meta element, so that it holds wherever the files are put, and `npm start` sends
 * it as a header as well.
 */
export const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");
