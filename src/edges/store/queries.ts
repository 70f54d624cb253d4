import type Database from 'better-sqlite3';
import { DummyDriver, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler, type Compilable, type CompiledQuery } from 'kysely';
import type { Tables } from './tables.ts';

/** Builds typed queries and compiles them to SQL; running them is the business of `queriesOn`. */
export const build = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});

/** Runs built queries on one database, at once and in place. */
export interface Queries {
  /** Runs a query that is built anew each time; its statement is kept by its text. */
  all<Row>(query: Compilable<Row>): Row[];
  /** A query that is built once, with a place for each argument. */
  prepare<Args extends object, Row>(
    query: (arg: <K extends keyof Args & string>(name: K) => Args[K]) => Compilable<Row>,
  ): Prepared<Args, Row>;
}

export interface Prepared<Args extends object, Row> {
  all(args: Args): Row[];
  get(args: Args): Row | undefined;
  /** Number of rows changed. */
  run(args: Args): number;
}

/** Stands in a query where an argument goes. */
class Place {
  constructor(readonly name: string) {}
}

export function queriesOn(database: Database.Database): Queries {
  const statements = new Map<string, Database.Statement>();
  const statementOf = ({ sql }: CompiledQuery): Database.Statement => {
    const known = statements.get(sql) ?? database.prepare(sql);
    statements.set(sql, known);
    return known;
  };
  return {
    all<Row>(query: Compilable<Row>): Row[] {
      const compiled = query.compile();
      return statementOf(compiled).all(...compiled.parameters) as Row[];
    },
    prepare<Args extends object, Row>(query: (arg: <K extends keyof Args & string>(name: K) => Args[K]) => Compilable<Row>) {
      const compiled = query(<K extends keyof Args & string>(name: K) => new Place(name) as Args[K]).compile();
      const statement = statementOf(compiled);
      const bound = (args: Args): unknown[] =>
        compiled.parameters.map((value) => (value instanceof Place ? args[value.name as keyof Args] : value));
      return {
        all: (args: Args) => statement.all(...bound(args)) as Row[],
        get: (args: Args) => statement.get(...bound(args)) as Row | undefined,
        run: (args: Args) => statement.run(...bound(args)).changes,
      };
    },
  };
}
