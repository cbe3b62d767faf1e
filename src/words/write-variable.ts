/** How a rule reads a name: `{"var": "role"}`. */
export function writeVariable(name: string): string {
  return `{"var": ${JSON.stringify(name)}}`;
}
