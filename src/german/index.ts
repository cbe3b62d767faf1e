export { german } from "./german.js";
