import { configurations } from "./src/build/configurations.ts";

/** `npm run build -- --env base=https://your.host/path/` says where dist/ will be hosted. */
export default ({ base } = {}) => configurations(base);
