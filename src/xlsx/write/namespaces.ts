export const mainNamespace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const relationshipNamespace =
  "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
