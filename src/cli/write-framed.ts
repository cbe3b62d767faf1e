import type { Assessment } from "../index.js";
import type { AssessmentWriter } from "./assessment-writer.js";
import type { Streams } from "./streams.js";

/** One piece a record between a head and a foot, which stand also round nothing. */
export function createFramedWriter(
  out: Streams["out"],
  head: string,
  render: (assessment: Assessment, at: string | undefined) => string,
  renderUnread: (problem: string) => string,
  foot: string,
): AssessmentWriter {
  let isOpen = false;
  const add = (piece: string): Promise<boolean> => {
    const text = isOpen ? piece : head + piece;
    isOpen = true;
    return text === "" ? Promise.resolve(true) : out(text);
  };
  return {
    write: (assessment, { at }) => add(render(assessment, at)),
    refuse: (problem) => add(renderUnread(problem)),
    close: () => add(foot),
  };
}
