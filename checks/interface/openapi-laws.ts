/** What is structurally wrong with an OpenAPI 3.1 document; empty when nothing is. Source of the rules: OpenAPI Specification 3.1.0, sections 4.8.1–4.8.24. */
export function openapiProblems(document: OpenApiDocument): string[] {
  return [
    ...(/^3\.1\.\d+$/.test(document.openapi) ? [] : [`openapi is ${document.openapi}`]),
    ...['title', 'version'].filter((key) => !document.info[key]).map((key) => `info.${key} is missing`),
    ...references(document)
      .filter((ref) => resolve(document, ref) === undefined)
      .map((ref) => `${ref} does not resolve`),
    ...Object.entries(document.paths).flatMap(([path, item]) =>
      Object.entries(item).flatMap(([method, operation]) => operationProblems(path, method, operation)),
    ),
  ];
}

export interface OpenApiDocument {
  readonly openapi: string;
  readonly info: Readonly<Record<string, string>>;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, unknown>> };
}

interface Operation {
  readonly summary?: string;
  readonly parameters?: readonly { readonly name: string; readonly in: string; readonly required?: boolean; readonly schema?: unknown }[];
  readonly requestBody?: { readonly content: Readonly<Record<string, unknown>> };
  readonly responses: Readonly<
    Record<string, { readonly description?: string; readonly content?: Readonly<Record<string, { readonly examples?: object }>> }>
  >;
}

function operationProblems(path: string, method: string, operation: Operation): string[] {
  const at = `${method} ${path}`;
  const inPath = [...path.matchAll(/\{([^}]+)\}/g)].map(([, name]) => name!);
  const parameters = operation.parameters ?? [];
  const named = parameters.filter((each) => each.in === 'path' && each.required === true).map(({ name }) => name);
  const refusals = Object.entries(operation.responses).filter(([status]) => Number(status) >= 400);
  return [
    ...(operation.summary ? [] : [`${at} has no summary`]),
    ...(path.startsWith('/') ? [] : [`${at} does not begin with a slash`]),
    ...inPath.filter((name) => !named.includes(name)).map((name) => `${at} does not describe {${name}}`),
    ...named.filter((name) => !inPath.includes(name)).map((name) => `${at} describes {${name}}, which is not in its path`),
    ...parameters.filter(({ schema }) => schema === undefined).map(({ name }) => `${at} has no schema for ${name}`),
    ...(Object.keys(operation.responses).some((status) => status.startsWith('2')) ? [] : [`${at} has no answer of success`]),
    ...Object.entries(operation.responses)
      .filter(([, response]) => !response.description)
      .map(([status]) => `${at} does not describe ${status}`),
    ...refusals
      .filter(([, { content }]) => !content?.['application/json']?.examples)
      .map(([status]) => `${at} has no example of ${status}`),
  ];
}

/** Every `$ref` below a value. */
function references(value: unknown): string[] {
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => (key === '$ref' && typeof inner === 'string' ? [inner] : references(inner)));
}

function resolve(document: unknown, ref: string): unknown {
  if (!ref.startsWith('#/')) return undefined;
  const keys = ref
    .slice(2)
    .split('/')
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
  return keys.reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], document);
}
