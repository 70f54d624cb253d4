export interface LockedPackage {
  readonly path: string;
  readonly name: string;
  readonly version: string;
  readonly licence: string | null;
  readonly integrity: string | null;
  readonly isForWork: boolean;
  readonly isOptional: boolean;
  readonly runsAtInstall: boolean;
}
export function lockedPackages(): LockedPackage[];
export function billOfMaterials(): {
  readonly bomFormat: string;
  readonly specVersion: string;
  readonly components: readonly {
    readonly 'bom-ref': string;
    readonly purl: string;
    readonly version: string;
    readonly hashes: readonly unknown[];
    readonly scope: string;
  }[];
};
export function licencesText(): string;
