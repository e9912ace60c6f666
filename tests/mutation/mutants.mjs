// Finds every small change of a source text that a good test should notice.
import { parseAst } from "vitest/node";

/** Operators that a slip of the pen exchanges. */
const exchanged = {
  "<": "<=",
  "<=": "<",
  ">": ">=",
  ">=": ">",
  "===": "!==",
  "!==": "===",
  "+": "-",
  "-": "+",
  "*": "/",
  "/": "*",
  "%": "*",
  "<<": ">>",
  ">>": "<<",
  "&": "|",
  "|": "&",
  "&&": "||",
  "||": "&&",
  "+=": "-=",
  "-=": "+=",
  "*=": "/=",
  "/=": "*=",
  "++": "--",
  "--": "++",
};
const exchangedNames = { min: "max", max: "min", floor: "ceil", ceil: "floor", some: "every", every: "some" };

const functionTypes = new Set(["FunctionDeclaration", "FunctionExpression", "ArrowFunctionExpression"]);
const isText = (node) => node.type === "Literal" && typeof node.value === "string";
/** Failures are of the program itself, and their words are for a developer. */
const isFailure = (node) =>
  node.type === "ThrowStatement" ||
  (node.type === "CallExpression" && ["invariant", "mustFind"].includes(node.callee.name));

/** The operator between two operands, which holds no comment there in this project. */
function operatorPlace(text, node) {
  const at = text.indexOf(node.operator, node.left.end);
  return [at, at + node.operator.length];
}

function ofOperator(text, node) {
  const to = exchanged[node.operator];
  if (to === undefined) return [];
  // A text joined by minus is no slip that a compiler lets pass.
  if (node.operator === "+" && (isText(node.left) || isText(node.right))) return [];
  return [["operator", ...operatorPlace(text, node), to]];
}

function ofLogical(text, node) {
  if (node.operator === "??") return [["default", node.start, node.end, text.slice(node.right.start, node.right.end)]];
  return [["logic", ...operatorPlace(text, node), exchanged[node.operator]]];
}

function ofUnary(text, node) {
  if (node.operator === "!") return [["negation", node.start, node.start + 1, ""]];
  if (node.operator === "-" && node.argument.type !== "Literal") return [["sign", node.start, node.start + 1, ""]];
  return [];
}

function ofUpdate(text, node) {
  const at = node.prefix ? node.start : node.argument.end;
  return [["operator", at, at + 2, exchanged[node.operator]]];
}

function ofLiteral(text, node) {
  const { value, start, end } = node;
  if (typeof value === "boolean") return [["boolean", start, end, String(!value)]];
  if (typeof value !== "number") return [];
  // One more than 1,800 or 1.2e-7 is no slip of the pen, but a moved decimal point is.
  const isCount = Number.isInteger(value) && value < 100;
  const more = ["number", start, end, String(isCount ? value + 1 : 10 * value)];
  return value === 0 ? [more] : [more, ["number", start, end, "0"]];
}

function ofCall(text, node) {
  const { callee } = node;
  if (callee.type === "Identifier" && exchangedNames[callee.name] !== undefined && callee.name.length === 3)
    return [["extreme", callee.start, callee.end, exchangedNames[callee.name]]];
  if (callee.type !== "MemberExpression" || callee.computed) return [];
  const { name, start, end } = callee.property;
  return exchangedNames[name] === undefined ? [] : [["extreme", start, end, exchangedNames[name]]];
}

const ofCondition = (text, { test }) => [
  ["condition", test.start, test.end, "true"],
  ["condition", test.start, test.end, "false"],
];

function ofStatement(text, node) {
  const { expression } = node;
  const isRemovable = ["CallExpression", "AssignmentExpression"].includes(expression.type);
  return isRemovable ? [["removal", node.start, node.end, ";"]] : [];
}

const found = {
  BinaryExpression: ofOperator,
  AssignmentExpression: ofOperator,
  LogicalExpression: ofLogical,
  UnaryExpression: ofUnary,
  UpdateExpression: ofUpdate,
  Literal: ofLiteral,
  CallExpression: ofCall,
  IfStatement: ofCondition,
  ConditionalExpression: ofCondition,
  ExpressionStatement: ofStatement,
};

const isType = ({ type }) => type.startsWith("TS") && !/^TS(?:NonNull|As|TypeAssertion|Satisfies)/.test(type);
const isSkipped = (node) => isType(node) || node.type === "ImportDeclaration" || isFailure(node);
const isNode = (value) => typeof value === "object" && value !== null && typeof value.type === "string";
const partsOf = (node) =>
  Object.entries(node)
    .filter(([key]) => key !== "key" || node.computed)
    .filter(([key]) => !/^(?:typeAnnotation|returnType|typeArguments|typeParameters|parent)$/.test(key))
    .flatMap(([, value]) => value)
    .filter(isNode);

const parsed = (text) => parseAst(text, { lang: "ts" });

/** Every function of a text: the place where its body begins, and whether the body is an expression. */
export function functionsOf(text) {
  const functions = [];
  const visit = (node) => {
    if (isType(node)) return;
    if (functionTypes.has(node.type) && node.body)
      functions.push({
        start: node.start,
        end: node.end,
        body: node.body,
        isBlock: node.body.type === "BlockStatement",
      });
    partsOf(node).forEach(visit);
  };
  visit(parsed(text));
  return functions;
}

/** Places where the body of a loop begins and ends. */
export function loopsOf(text) {
  const bodies = [];
  const visit = (node) => {
    if (isType(node)) return;
    if (/^(?:For|While|DoWhile)/.test(node.type)) bodies.push([node.body.start, node.body.end]);
    partsOf(node).forEach(visit);
  };
  visit(parsed(text));
  return bodies;
}

/** Where the last import of a text ends. */
export const endOfImports = (text) =>
  Math.max(
    0,
    ...parsed(text)
      .body.filter(({ type }) => type === "ImportDeclaration")
      .map(({ end }) => end),
  );

/** Names of the modules that a text imports to use values of them. */
export const importsOf = (text) =>
  parsed(text)
    .body.filter(({ type, source }) => /^(?:Import|Export)/.test(type) && source)
    .filter(({ importKind, exportKind }) => importKind !== "type" && exportKind !== "type")
    .map(({ source }) => source.value);

/**
 * All mutants of a source text, in its order. Each replaces the characters from `start` to `end` by `to`, inside the function
 * number `inside` of `functionsOf`, -1 outside of all.
 */
export function mutantsOf(text) {
  const mutants = [];
  const functions = functionsOf(text);
  const insideOf = (at) => functions.findLastIndex(({ start, end }) => start <= at && at < end);
  const visit = (node) => {
    if (isSkipped(node)) return;
    for (const [kind, start, end, to] of found[node.type]?.(text, node) ?? []) {
      const line = text.slice(0, start).split("\n").length;
      // A condition may be exchanged by itself; anything else with all of its expression or statement.
      const around = kind === "condition" ? [start, end] : [node.start, node.end];
      mutants.push({ kind, start, end, to, inside: insideOf(start), line, around });
    }
    partsOf(node).forEach(visit);
  };
  visit(parsed(text));
  return mutants;
}

export const mutated = (text, { start, end, to }) => text.slice(0, start) + to + text.slice(end);
