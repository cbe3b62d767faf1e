declare module "json-logic-js" {
  const jsonLogic: {
    apply(logic: unknown, data: unknown): unknown;
    add_operation(name: string, code: (...operands: never[]) => unknown): void;
  };
  export = jsonLogic;
}
