/**
 * What the workbook's page may load and run: what it was served with, and nothing else. The page
 * carries it in a meta element, so that it holds wherever the files are put, and `npm start` sends
 * it as a header as well.
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  // The spreadsheet's menus and dialogs write style elements as they open. Styles run no code and,
  // under the rest of this policy, load nothing from elsewhere.
  "style-src 'self' 'unsafe-inline'",
  "font-src 'self'",
  // Cursors and small icons inside the spreadsheet's style sheet are data addresses.
  "img-src 'self' data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");
