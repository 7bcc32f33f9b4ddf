/** A source of the spreadsheet whose classes set their fields by plain assignments. */
export default function fieldsLoader(source: string): string;
