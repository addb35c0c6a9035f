export declare function writeConf(folder: string, inner: string): string;
export declare function openNginx(folder: string, options: { readonly listen: number; readonly ports: readonly number[] }): Promise<{ close(): Promise<void> }>;
