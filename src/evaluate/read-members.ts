import { isJsonObject, isMissing, type JsonObject, type Member, readMember } from "../steps/index.js";

/** The subject as a whole, where a step is not asked of each member of a list. */
export const WHOLE: Member = { index: -1, object: undefined, id: undefined, fault: undefined };

/** The members of `subject.x`; a list that is missing or no list gives one member that cannot be judged. */
export function readMembers(pointer: string, subject: JsonObject): readonly Member[] {
  const list = readMember(subject, pointer.slice("subject.".length));
  if (!Array.isArray(list) || list.length === 0) {
    return [{ ...WHOLE, fault: isMissing(list) ? "fact-missing" : "unreadable" }];
  }
  const ids: (string | undefined)[] = [];
  // Why: a hole in a list is no member that can be passed over, as `map` would.
  for (let index = 0; index < list.length; index += 1) ids.push(readId(list[index]));
  return ids.map((id, index) => {
    const member: unknown = list[index];
    const isRepeated = ids.indexOf(id) !== ids.lastIndexOf(id);
    const fault = id === undefined ? "fact-missing" : isRepeated ? "conflicting" : undefined;
    return { index, object: isJsonObject(member) ? member : undefined, id, fault };
  });
}

/** The id of a member without blanks around it; undefined where it has none. */
function readId(member: unknown): string | undefined {
  const id = isJsonObject(member) && typeof member.id === "string" ? member.id.trim() : "";
  return id === "" ? undefined : id;
}
