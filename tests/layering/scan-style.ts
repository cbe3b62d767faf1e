import ts from "typescript";

/** One place that breaks a rule of style: `line` counts from 1. */
export interface StyleFault {
  readonly rule: string;
  readonly line: number;
}

type NodeRule = (node: ts.Node, source: ts.SourceFile, file: string) => string | undefined;

const LONGEST_FUNCTION_LINES = 50;
const LONGEST_FILE_LINES = 350;
/** Why: their last digit is the engine's own, and results are the same on every engine. */
const ENGINE_OWN_MATH = /^Math\.(exp|expm1|log|log1p|log2|log10|pow|cbrt|hypot|a?(sin|cos|tan)h?|atan2|random)$/;
const CLOCK_OR_MACHINE = /^(Date\.now|performance|process|console|Buffer|globalThis|__dirname|__filename)$/;
/** Rooms that may know the clock, the process and the console; the files room meets bytes as Node's buffers. */
const MACHINE_ROOMS = /(^|\/)src\/(cli|workshop)\//;
const FILES_ROOM = /(^|\/)src\/files\//;

/** Everything in one file of `src` that the style forbids and the linter cannot see. */
export function scanStyle(file: string, text: string): readonly StyleFault[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const faults: StyleFault[] = scanWhole(source, text);
  const visit = (node: ts.Node): void => {
    for (const findFault of NODE_RULES) {
      const rule = findFault(node, source, file);
      if (rule !== undefined) faults.push({ rule, line: lineOf(source, node.getStart(source)) });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return faults;
}

function scanWhole(source: ts.SourceFile, text: string): StyleFault[] {
  const lines = text.split("\n");
  const faults: StyleFault[] = [];
  if (lines.length - 1 > LONGEST_FILE_LINES) faults.push({ rule: "file-too-long", line: LONGEST_FILE_LINES + 1 });
  for (const [index, line] of lines.entries()) {
    if (/@ts-(ignore|expect-error|nocheck)|biome-ignore/.test(line)) faults.push({ rule: "silenced", line: index + 1 });
    if (/^\s*\/\/\s*[-=*#]{4,}/.test(line)) faults.push({ rule: "banner", line: index + 1 });
  }
  for (const statement of source.statements) {
    const rule = findModuleState(statement);
    if (rule !== undefined) faults.push({ rule, line: lineOf(source, statement.getStart(source)) });
  }
  return faults;
}

const NODE_RULES: readonly NodeRule[] = [
  findCast,
  findDefaultExport,
  findBadImport,
  findLongFunction,
  findEngineOwnMath,
  findClockOrMachine,
];

function findCast(node: ts.Node, source: ts.SourceFile): string | undefined {
  if (ts.isNonNullExpression(node)) return "non-null";
  if (!ts.isAsExpression(node) && !ts.isTypeAssertionExpression(node)) return undefined;
  if (ts.isConstTypeReference(node.type)) return undefined;
  return hasBoundaryMark(node, source) ? undefined : "cast";
}

/** A cast is allowed where the same line or the one before says `// Boundary:` and why. */
function hasBoundaryMark(node: ts.Node, source: ts.SourceFile): boolean {
  const line = lineOf(source, node.getStart(source));
  return source.text
    .split("\n")
    .slice(Math.max(0, line - 2), line)
    .some((text) => /\/\/ Boundary: \S/.test(text));
}

function findDefaultExport(node: ts.Node): string | undefined {
  if (ts.isExportAssignment(node)) return "default-export";
  if (ts.isExportSpecifier(node) && node.name.text === "default") return "default-export";
  const modifiers = ts.canHaveModifiers(node) ? (ts.getModifiers(node) ?? []) : [];
  return modifiers.some(({ kind }) => kind === ts.SyntaxKind.DefaultKeyword) ? "default-export" : undefined;
}

function findBadImport(node: ts.Node): string | undefined {
  if (!ts.isImportDeclaration(node) && !ts.isExportDeclaration(node)) return undefined;
  const from = node.moduleSpecifier;
  if (from === undefined || !ts.isStringLiteral(from)) return undefined;
  if (ts.isExportDeclaration(node) && node.exportClause === undefined) return "export-star";
  return /^\.{1,2}\//.test(from.text) && !/\.(js|json)$/.test(from.text) ? "import-without-js" : undefined;
}

function findLongFunction(node: ts.Node, source: ts.SourceFile): string | undefined {
  if (!ts.isFunctionLike(node) || !("body" in node) || node.body === undefined) return undefined;
  const length = lineOf(source, node.end) - lineOf(source, node.getStart(source)) + 1;
  return length > LONGEST_FUNCTION_LINES ? "function-too-long" : undefined;
}

function findEngineOwnMath(node: ts.Node, source: ts.SourceFile): string | undefined {
  return ts.isPropertyAccessExpression(node) && ENGINE_OWN_MATH.test(node.getText(source))
    ? "engine-own-math"
    : undefined;
}

function findClockOrMachine(node: ts.Node, source: ts.SourceFile, file: string): string | undefined {
  if (MACHINE_ROOMS.test(file)) return undefined;
  if (ts.isNewExpression(node) && node.expression.getText(source) === "Date" && !node.arguments?.length) return "clock";
  if (ts.isPropertyAccessExpression(node) && /^(Date|Temporal)\.(now|Now)$/.test(node.getText(source))) return "clock";
  if (!ts.isIdentifier(node) || !CLOCK_OR_MACHINE.test(node.text) || !isFreeName(node)) return undefined;
  return node.text === "Buffer" && FILES_ROOM.test(file) ? undefined : "machine";
}

/** Whether an identifier stands for a global value rather than for a property, a key or a declaration. */
function isFreeName(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isTypeReferenceNode(parent) || ts.isQualifiedName(parent)) return false;
  const declares = "name" in parent && parent.name === node;
  return !declares && !ts.isImportSpecifier(parent) && !ts.isExportSpecifier(parent);
}

/** `let` at the top of a module, or a collection there that its type lets anyone change. */
function findModuleState(statement: ts.Statement): string | undefined {
  if (!ts.isVariableStatement(statement)) return undefined;
  if ((statement.declarationList.flags & ts.NodeFlags.Const) === 0) return "module-state";
  return statement.declarationList.declarations.some(isChangeable) ? "module-state" : undefined;
}

function isChangeable({ type, initializer }: ts.VariableDeclaration): boolean {
  if (initializer === undefined) return false;
  const isReadonlyType = type !== undefined && /^(readonly|Readonly)/.test(type.getText());
  if (ts.isNewExpression(initializer)) {
    return /^(Weak)?(Map|Set)$/.test(initializer.expression.getText()) && !isReadonlyType;
  }
  const isEmptyList = ts.isArrayLiteralExpression(initializer) && initializer.elements.length === 0;
  const isEmptyObject = ts.isObjectLiteralExpression(initializer) && initializer.properties.length === 0;
  return (isEmptyList || isEmptyObject) && !isReadonlyType;
}

function lineOf(source: ts.SourceFile, position: number): number {
  return source.getLineAndCharacterOfPosition(position).line + 1;
}
