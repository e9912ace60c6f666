// Plain data of a scenario and the places in it, each with the parts of the JSON Schema that describe it.

export interface SchemaNode {
  readonly $ref?: string;
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly SchemaNode[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: SchemaNode | boolean;
  readonly items?: SchemaNode | boolean;
  readonly prefixItems?: readonly SchemaNode[];
  readonly minItems?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly examples?: readonly unknown[];
  readonly $defs?: Readonly<Record<string, SchemaNode>>;
}

export type Mapping = Record<string, unknown>;
export type Container = Mapping | unknown[];

export interface Site {
  readonly parent: Container;
  readonly key: string | number;
  /** All that may describe the value; empty where the schema knows nothing. */
  readonly schemas: readonly SchemaNode[];
}

export function isMapping(value: unknown): value is Mapping {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isContainer(value: unknown): value is Container {
  return typeof value === "object" && value !== null;
}

export function valueAt({ parent, key }: Site): unknown {
  return (parent as Mapping)[key];
}

export function put({ parent, key }: Site, value: unknown): void {
  (parent as Mapping)[key] = value;
}

export class Schema {
  readonly #definitions: Readonly<Record<string, SchemaNode>>;
  readonly root: SchemaNode;

  constructor(root: SchemaNode) {
    this.root = root;
    this.#definitions = root.$defs ?? {};
  }

  /** All alternatives; references are followed, except those to a dimension, which say what quantity is meant. */
  alternatives(node: SchemaNode): readonly SchemaNode[] {
    const target = node.$ref === undefined ? undefined : this.#definitions[nameOf(node.$ref)];
    if (target !== undefined && (target.type === undefined || target.type === "object" || target.anyOf !== undefined))
      return this.alternatives(target);
    return node.anyOf === undefined ? [node] : node.anyOf.flatMap((each) => this.alternatives(each));
  }

  /** The names of all keys, wherever they stand. */
  keys(): readonly string[] {
    const found = new Set<string>();
    const visit = (node: unknown): void => {
      if (!isContainer(node)) return;
      for (const key of Object.keys((node as SchemaNode).properties ?? {})) found.add(key);
      Object.values(node).forEach(visit);
    };
    visit(this.root);
    return [...found];
  }

  /** What may stand behind a key of one of these. */
  children(nodes: readonly SchemaNode[], key: string | number): readonly SchemaNode[] {
    return nodes.flatMap((node) => {
      const child =
        typeof key === "number"
          ? (node.prefixItems?.[key] ?? node.items)
          : (ownOf(node.properties, key) ?? node.additionalProperties);
      return typeof child === "object" ? this.alternatives(child) : [];
    });
  }

  /** Every place in the tree, parents first. */
  sites(tree: Container): readonly Site[] {
    const found: Site[] = [];
    const visit = (parent: Container, schemas: readonly SchemaNode[]): void => {
      for (const key of Array.isArray(parent) ? parent.keys() : Object.keys(parent)) {
        const site = { parent, key, schemas: this.children(schemas, key) };
        found.push(site);
        const value = valueAt(site);
        if (isContainer(value)) visit(value, site.schemas);
      }
    };
    visit(tree, this.alternatives(this.root));
    return found;
  }
}

export function nameOf(reference: string): string {
  return reference.replace("#/$defs/", "");
}

function ownOf<Value>(record: Readonly<Record<string, Value>> | undefined, key: string): Value | undefined {
  return record !== undefined && Object.hasOwn(record, key) ? record[key] : undefined;
}
