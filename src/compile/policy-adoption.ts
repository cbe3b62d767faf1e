import type { PolicyDocument } from "../model/index.js";

/** An adoption as a policy states it. */
export type PolicyAdoption = NonNullable<PolicyDocument["adopted"]>[number];
