import { isJsonObject, isMissing, type JsonObject, type Member, readMember } from "../steps/index.js";

/** The subject as a whole, where a step is not asked of each member of a list. */
export const WHOLE: Member = { index: -1, object: undefined, id: undefined, fault: undefined };

/** The members of `subject.x`; a list that is missing or no list gives one member that cannot be judged. */
export function readMembers(pointer: string, subject: JsonObject): readonly Member[] {
  const list = readMember(subject, pointer.slice("subject.".length));
  if (!Array.isArray(list) || list.length === 0) {
    return [{ ...WHOLE, fault: isMissing(list) ? "fact-missing" : "unreadable" }];
  }
  const ids = Array.from(list, (member: unknown) =>
    isJsonObject(member) && typeof member.id === "string" ? member.id.trim() : "",
  );
  // Why: a hole in a list is no member that can be passed over.
  return Array.from(list, (member: unknown, index) => {
    const id = ids[index] ?? "";
    const named = id !== "";
    const repeated = named && ids.indexOf(id) !== ids.lastIndexOf(id);
    return {
      index,
      object: isJsonObject(member) ? member : undefined,
      id: named ? id : undefined,
      fault: named ? (repeated ? "conflicting" : undefined) : "fact-missing",
    };
  });
}
