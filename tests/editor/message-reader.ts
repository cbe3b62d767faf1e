const HEADER_END = Buffer.from("\r\n\r\n");

/**
 * Cuts a stream of bytes into the messages of the Language Server Protocol: a header with the length of the body in
 * bytes, a blank line, and the body.
 * Source: Language Server Protocol 3.17, base protocol.
 */
export function createMessageReader(receive: (message: unknown) => void): (bytes: Buffer) => void {
  let held = Buffer.alloc(0);
  return (bytes) => {
    held = Buffer.concat([held, bytes]);
    for (let end = held.indexOf(HEADER_END); end >= 0; end = held.indexOf(HEADER_END)) {
      const length = /^content-length: *(\d+)\r?$/im.exec(held.toString("ascii", 0, end))?.[1];
      if (length === undefined) throw new Error(`a header without a length: ${held.toString("ascii", 0, end)}`);
      const start = end + HEADER_END.length;
      if (held.length < start + Number(length)) return;
      const body = held.toString("utf8", start, start + Number(length));
      held = held.subarray(start + Number(length));
      receive(JSON.parse(body));
    }
  };
}

/** A message with its header. */
export function frameMessage(message: object): string {
  const body = JSON.stringify({ jsonrpc: "2.0", ...message });
  return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
}
