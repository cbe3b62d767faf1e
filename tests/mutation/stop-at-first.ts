import { configureGlobal, readConfigureGlobal } from "fast-check";

// Why: that a law fails is all that is asked of it here; looking for its smallest counterexample takes seconds.
configureGlobal({ ...readConfigureGlobal(), endOnFailure: true });
