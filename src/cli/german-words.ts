export { german } from "../german/index.js";
