// The few parts of Node that the tests and scripts use, so that the compiler needs no further package.

declare module 'node:test' {
    export function test(name: string, body: () => void | Promise<void>): void;
}

declare module 'node:assert/strict' {
    interface Assert {
        (value: unknown, message?: string): asserts value;
        equal(actual: unknown, expected: unknown, message?: string): void;
        notEqual(actual: unknown, expected: unknown, message?: string): void;
        deepEqual(actual: unknown, expected: unknown, message?: string): void;
        throws(body: () => unknown, expected?: RegExp | object): void;
    }
    const assert: Assert;
    export default assert;
}

declare module 'node:fs/promises' {
    export function mkdir(path: string, options: { recursive: boolean }): Promise<void>;
    export function writeFile(path: string, content: Uint8Array | string): Promise<void>;
    export function readFile(path: string): Promise<Uint8Array>;
    export function rm(
        path: string,
        options: { recursive: boolean; force: boolean; maxRetries: number; retryDelay: number },
    ): Promise<void>;
    export function mkdtemp(prefix: string): Promise<string>;
}

declare module 'node:os' {
    export function tmpdir(): string;
}

declare module 'node:path' {
    export const sep: string;
    export function join(...parts: string[]): string;
    export function resolve(...parts: string[]): string;
    export function extname(path: string): string;
}

declare module 'node:url' {
    export function fileURLToPath(url: string | URL): string;
}

declare module 'node:process' {
    export const argv: string[];
    export const env: Record<string, string | undefined>;
    export const stdout: { write(text: string): void };
    export let exitCode: number | undefined;
}

declare module 'node:child_process' {
    interface Pipe {
        write(text: string): void;
        on(event: 'data', listener: (chunk: { toString(): string }) => void): void;
    }
    export interface Child {
        stdio: Pipe[];
        kill(): void;
        on(event: 'exit', listener: (code: number | null) => void): void;
    }
    export function spawn(file: string, args: string[], options: { stdio: string[] }): Child;
}

declare module 'node:buffer' {
    export const Buffer: { from(text: string, encoding: 'base64'): Uint8Array };
}

declare module 'node:http' {
    interface Request {
        url?: string;
    }
    interface Response {
        writeHead(status: number, headers?: Record<string, string>): Response;
        end(content?: Uint8Array | string): void;
    }
    interface Server {
        listen(port: number, host: string, done: () => void): void;
        address(): { port: number } | string | null;
        close(): void;
    }
    export function createServer(answer: (request: Request, response: Response) => void): Server;
}
