// The part of puppeteer-core that the test in Firefox uses, so that types are checked where the library is not installed.
declare module "puppeteer-core" {
  export interface Page {
    on(event: "console", listener: (message: { text(): string }) => void): void;
    on(event: "pageerror", listener: (error: unknown) => void): void;
    on(event: "request", listener: (request: { url(): string }) => void): void;
    goto(address: string): Promise<unknown>;
    addScriptTag(script: { readonly content: string }): Promise<unknown>;
    evaluate(code: string): Promise<unknown>;
    readonly keyboard: { press(key: string): Promise<void> };
  }

  export interface Browser {
    newPage(): Promise<Page>;
    version(): Promise<string>;
    close(): Promise<void>;
  }

  export interface LaunchOptions {
    readonly browser: "firefox";
    readonly executablePath: string;
    readonly headless: boolean;
  }

  const puppeteer: { launch(options: LaunchOptions): Promise<Browser> };
  export default puppeteer;
}
