export const MAIN_NAMESPACE = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const RELATIONSHIP_NAMESPACE =
  "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
