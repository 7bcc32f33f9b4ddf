/** What `npm run spare` runs of the project with this top level. */
export function launched(root: URL): URL;
