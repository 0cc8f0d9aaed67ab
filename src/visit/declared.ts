/**
 * The declared fields of a loose schema. Files keep fields that this version does not know, so the
 * schemas are loose; the types leave that index signature out, or a misspelt field would compile.
 */
export type Declared<T> = T extends readonly (infer Item)[]
  ? Declared<Item>[]
  : T extends object
    ? { [Key in keyof T as string extends Key ? never : Key]: Declared<T[Key]> }
    : T;
