import {
  AstTreeBuilder,
  ErrorType,
  ErrorValueObject,
  Interpreter,
  LexerNode,
  LexerTreeBuilder,
} from "@univerjs/engine-formula";

/**
 * Lets one formula fail without the others.
 *
 * There are formulas that the engine's parser or one of its functions answers with an exception, and
 * then none of the workbook is calculated. Such a formula shows #VALUE!, and all else goes on.
 */
export function failAlone(): void {
  const { parse } = AstTreeBuilder.prototype;
  AstTreeBuilder.prototype.parse = function (lexerNode) {
    try {
      return parse.call(this, lexerNode);
    } catch {
      return parse.call(this, unreadable());
    }
  };

  const { execute, executeAsync } = Interpreter.prototype;
  Interpreter.prototype.execute = function (nodeData) {
    try {
      return execute.call(this, nodeData);
    } catch {
      return ErrorValueObject.create(ErrorType.VALUE);
    }
  };
  Interpreter.prototype.executeAsync = async function (nodeData) {
    try {
      return await executeAsync.call(this, nodeData);
    } catch {
      return ErrorValueObject.create(ErrorType.VALUE);
    }
  };
}

/** What stands for a formula that cannot be read. */
function unreadable(): LexerNode {
  const node = new LexerTreeBuilder().treeBuilder(`=${ErrorType.VALUE}`);
  return node instanceof LexerNode ? node : new LexerNode();
}
