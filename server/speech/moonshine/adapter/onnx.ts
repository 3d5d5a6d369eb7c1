/**
 * As much of the ONNX format (protobuf wire format, onnx.proto3) as it takes to find weights in a file and write over them in place:
 * sizes never change, so nothing is ever re-encoded.
 */

/** One field of a message: its number, and where its bytes lie; a varint's value is `value`. */
interface Field {
  readonly field: number;
  readonly from: number;
  readonly to: number;
  readonly value?: number;
}

export function varint(bytes: Buffer, at: number): { readonly value: number; readonly to: number } {
  let value = 0;
  for (let shift = 1; ; shift *= 128, at += 1) {
    const byte = bytes[at];
    if (byte === undefined) throw new RangeError('The ONNX file ends in the middle of a number.');
    value += (byte & 0x7f) * shift;
    if (byte < 0x80) return { value, to: at + 1 };
  }
}

/** Writes a number into the room that another one had; a varint may be longer than it needs to be. */
export function writeVarint(bytes: Buffer, { from, to }: { readonly from: number; readonly to: number }, value: number): void {
  let rest = value;
  for (let at = from; at < to; at += 1) {
    bytes[at] = (rest & 0x7f) | (at + 1 < to ? 0x80 : 0);
    rest >>= 7;
  }
  if (rest !== 0) throw new RangeError('The number does not fit into its place.');
}

function* fields(bytes: Buffer, from: number, to: number): Generator<Field> {
  for (let at = from; at < to;) {
    const tag = varint(bytes, at);
    const field = Math.floor(tag.value / 8);
    const kind = tag.value % 8;
    if (kind === 0) {
      const { value, to: end } = varint(bytes, tag.to);
      yield { field, from: tag.to, to: end, value };
      at = end;
    } else if (kind === 2) {
      const { value, to: start } = varint(bytes, tag.to);
      yield { field, from: start, to: start + value };
      at = start + value;
    } else if (kind === 1 || kind === 5) {
      at = tag.to + (kind === 1 ? 8 : 4);
      yield { field, from: tag.to, to: at };
    } else throw new RangeError(`The ONNX file holds a field of an unknown kind (${kind}).`);
  }
}

const GRAPH = 7;
const NODE = 1,
  INITIALIZER = 5;
const NODE_INPUT = 1,
  NODE_NAME = 3,
  NODE_OP = 4,
  NODE_ATTRIBUTE = 5,
  ATTRIBUTE_GRAPH = 6;
const TENSOR_FLOATS = 4,
  TENSOR_INTS = 5,
  TENSOR_NAME = 8,
  TENSOR_RAW = 9;

export interface OnnxNode {
  readonly name: string;
  readonly op: string;
  readonly inputs: readonly string[];
}
export interface OnnxFile {
  /** Nodes of the graph and of the graphs inside it (the branches of an If). */
  readonly nodes: readonly OnnxNode[];
  /** Where the bytes of each named tensor lie in the file: raw, or packed floats (4 bytes each) or integers (varints). */
  readonly tensors: ReadonlyMap<string, { readonly from: number; readonly to: number }>;
}

/** @throws RangeError on a file that is no ONNX model */
export function readOnnx(bytes: Buffer): OnnxFile {
  const nodes: OnnxNode[] = [];
  const tensors = new Map<string, { from: number; to: number }>();
  const text = ({ from, to }: Field): string => bytes.toString('utf8', from, to);

  const readGraph = (from: number, to: number): void => {
    for (const part of fields(bytes, from, to)) {
      if (part.field === NODE) readNode(part.from, part.to);
      if (part.field === INITIALIZER) readTensor(part.from, part.to);
    }
  };
  const readNode = (from: number, to: number): void => {
    let name = '',
      op = '';
    const inputs: string[] = [];
    for (const part of fields(bytes, from, to)) {
      if (part.field === NODE_INPUT) inputs.push(text(part));
      if (part.field === NODE_NAME) name = text(part);
      if (part.field === NODE_OP) op = text(part);
      if (part.field === NODE_ATTRIBUTE)
        for (const inner of fields(bytes, part.from, part.to)) if (inner.field === ATTRIBUTE_GRAPH) readGraph(inner.from, inner.to);
    }
    nodes.push({ name, op, inputs });
  };
  const readTensor = (from: number, to: number): void => {
    let name = '';
    let raw: Field | undefined;
    for (const part of fields(bytes, from, to)) {
      if (part.field === TENSOR_NAME) name = text(part);
      if (part.field === TENSOR_RAW || part.field === TENSOR_FLOATS || part.field === TENSOR_INTS) raw = part;
    }
    if (raw) tensors.set(name, { from: raw.from, to: raw.to });
  };

  for (const part of fields(bytes, 0, bytes.length)) if (part.field === GRAPH) readGraph(part.from, part.to);
  if (nodes.length === 0) throw new RangeError('This file holds no ONNX graph.');
  return { nodes, tensors };
}
