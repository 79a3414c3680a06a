// What of the flat drawing the maker has put out of sight.

/** By roles, and by `layer:` names. */
export const isHidden = (
  hidden: ReadonlySet<string>,
  { role, layer }: { readonly role: string; readonly layer?: string },
): boolean => hidden.has(role === 'artwork' ? `layer:${layer}` : role);
