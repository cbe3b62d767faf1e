/** A part of a policy that differs from its parent's. `of` names a check, `name` a step as `check/step`, or what the kind says. */
export type PartOfPolicy =
  | { readonly kind: "policy-scope" | "gaps" }
  | { readonly kind: "fact" | "instrument"; readonly name: string }
  | { readonly kind: "check-left-out"; readonly of: string }
  | { readonly kind: "scope" | "subject" | "former-names" | "competence" | "order" | "unanchored"; readonly of: string }
  | { readonly kind: "step" | "step-left-out" | "step-added"; readonly name: string }
  | {
      readonly kind: "requirement-left-out" | "requirement-added" | "consequence" | "limit";
      readonly name: string;
      readonly requirement: string;
    }
  | { readonly kind: "interval" | "rule"; readonly name: string; readonly of: string };
