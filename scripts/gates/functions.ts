/** The exported functions of a source file, with their parameters, whether these are numbers, and the block above. */
import type { Declaration, Expression, Function as FunctionNode, ParamPattern, Program, TSType } from 'oxc-parser';
import { type Tag, tagsOf } from './doc-block.ts';
import { lineOf, parse } from './tree.ts';

export interface ExportedFunction {
  readonly name: string;
  readonly line: number;
  readonly parameters: readonly { readonly name: string | undefined; readonly numeric: boolean }[];
  readonly returns: 'number' | 'other' | 'unstated';
  readonly tags: readonly Tag[];
}

/** @param aliases  names that mean a number: `Mm`, `Newton` … */
export function exportedFunctions(path: string, text: string, aliases: ReadonlySet<string>): ExportedFunction[] {
  const { program, comments } = parse(path, text);
  const numbers = new Set([...aliases, ...numberAliases(program)]);
  const tagsAbove = (start: number): Tag[] => {
    const comment = comments.findLast((c) => c.end <= start);
    const touches = comment?.type === 'Block' && text.slice(comment.end, start).trim() === '';
    return touches && comment.value.startsWith('*') ? tagsOf(comment.value) : [];
  };
  return program.body.flatMap((statement) => {
    if (statement.type !== 'ExportNamedDeclaration' || !statement.declaration) return [];
    return declared(statement.declaration).map(({ name, node }) => ({
      name,
      line: lineOf(text, statement.start),
      parameters: node.params.map((p) => parameter(p, numbers)),
      returns: node.returnType ? (isNumeric(node.returnType.typeAnnotation, numbers) ? 'number' : 'other') : 'unstated',
      tags: tagsAbove(statement.start),
    }));
  });
}

/** Type names of a file that stand for a plain number. */
export function numberAliases(program: Program): string[] {
  return program.body.flatMap((statement) => {
    const node = statement.type === 'ExportNamedDeclaration' ? statement.declaration : statement;
    return node?.type === 'TSTypeAliasDeclaration' && node.typeAnnotation.type === 'TSNumberKeyword'
      ? [node.id.name]
      : [];
  });
}

type Callable = Pick<FunctionNode, 'params' | 'returnType'>;

function declared(node: Declaration): { name: string; node: Callable }[] {
  if (node.type === 'FunctionDeclaration') return node.id ? [{ name: node.id.name, node }] : [];
  if (node.type !== 'VariableDeclaration') return [];
  return node.declarations.flatMap(({ id, init }) =>
    id.type === 'Identifier' && init && isFunction(init) ? [{ name: id.name, node: init }] : [],
  );
}

function isFunction(node: Expression): node is Extract<Expression, Callable & { type: string }> {
  return node.type === 'ArrowFunctionExpression' || node.type === 'FunctionExpression';
}

function parameter(node: ParamPattern, numbers: ReadonlySet<string>): ExportedFunction['parameters'][number] {
  if (node.type === 'TSParameterProperty') return { name: undefined, numeric: false };
  const inner = node.type === 'AssignmentPattern' ? node.left : node.type === 'RestElement' ? node.argument : node;
  const type = (node.type === 'RestElement' ? node : inner).typeAnnotation?.typeAnnotation;
  const byDefault =
    node.type === 'AssignmentPattern' && node.right.type === 'Literal' && typeof node.right.value === 'number';
  return {
    name: inner.type === 'Identifier' ? inner.name : undefined,
    numeric: type ? isNumeric(type, numbers) : byDefault,
  };
}

/** A number, a list of numbers, or either of them or nothing. */
function isNumeric(type: TSType, numbers: ReadonlySet<string>): boolean {
  switch (type.type) {
    case 'TSNumberKeyword':
      return true;
    case 'TSTypeReference': {
      if (type.typeName.type !== 'Identifier') return false;
      const inner = type.typeArguments?.params[0];
      const list = ['Array', 'ReadonlyArray'].includes(type.typeName.name);
      return list && inner ? isNumeric(inner, numbers) : numbers.has(type.typeName.name);
    }
    case 'TSArrayType':
      return isNumeric(type.elementType, numbers);
    case 'TSTypeOperator':
    case 'TSParenthesizedType':
      return isNumeric(type.typeAnnotation, numbers);
    case 'TSUnionType': {
      const some = type.types.filter((t) => t.type !== 'TSUndefinedKeyword' && t.type !== 'TSNullKeyword');
      return some.length > 0 && some.every((t) => isNumeric(t, numbers));
    }
    default:
      return false;
  }
}
