export { plainCopy as portableCopy } from "./plain";
