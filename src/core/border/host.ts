// What the core asks of those who run it.

/** A step that took something or takes time has started; and each completion that it needed. */
export declare function started(node: i32, row: i32, tick: f64, ticks: f64): void;
export declare function needed(node: i32, before: i32): void;

/** The draw of a distribution where no table helps: at the very ends, and for measured values. */
export declare function exactTicks(distribution: i32, u: f64): f64;
