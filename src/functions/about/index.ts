export { version } from "./version";
