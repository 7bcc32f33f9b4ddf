export { reserveCheck } from "./reserveCheck";
