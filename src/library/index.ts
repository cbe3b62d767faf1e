export { type CompiledPolicy, type CompileOptions, compilePolicy } from "./compile-policy.js";
