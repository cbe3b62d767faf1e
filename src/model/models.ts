import { assessmentModel } from "./assessment-model.js";
import { formModel } from "./form-model.js";
import { planModel } from "./plan-model.js";
import { policyModel } from "./policy-model.js";
import { recordModel } from "./record-model.js";

/** Every published schema by its name. */
export const MODELS = {
  policy: policyModel,
  record: recordModel,
  assessment: assessmentModel,
  plan: planModel,
  form: formModel,
};
