/** Whether what a schema reads and what the domain writes are the same type, `readonly` left aside. */

/** Written-out and writable, so that only the fields count. */
export type Plain<T> = T extends readonly (infer E)[]
  ? Plain<E>[]
  : T extends object
    ? { -readonly [Field in keyof T]: Plain<T[Field]> }
    : T;

/** True only where the two are the same in every field, optional ones included. */
export type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;
