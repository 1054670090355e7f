/** Keeps the `limit` entries used last. For values that can always be read again from the database. */
export class BoundedCache<Value> {
  private readonly entries = new Map<string, Value>();

  constructor(private readonly limit: number) {}

  get(key: string): Value | undefined {
    const value = this.entries.get(key);
    if (value === undefined) return undefined;
    this.entries.delete(key); // moves to the young end
    this.entries.set(key, value);
    return value;
  }

  delete(key: string): void {
    this.entries.delete(key);
  }

  set(key: string, value: Value): void {
    this.entries.delete(key);
    this.entries.set(key, value);
    const oldest = this.entries.keys().next();
    if (this.entries.size > this.limit && oldest.done !== true) this.entries.delete(oldest.value);
  }
}
