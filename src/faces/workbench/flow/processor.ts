/** The graphics processor of this machine, where a browser may compute on it. */

const IN_SOFTWARE = /swiftshader|llvmpipe|software/i;

/** Null: none, or only shaders run in software, which would be slower than the kernel and keep all cores busy. */
export async function graphicsProcessor(software: boolean): Promise<GPUAdapter | null> {
  const adapter = (await navigator.gpu?.requestAdapter({ powerPreference: 'high-performance' })) ?? null;
  if (adapter === null || software) return adapter;
  const { info } = adapter;
  const isSoftware =
    info.isFallbackAdapter || IN_SOFTWARE.test(`${info.vendor} ${info.architecture} ${info.description}`);
  return isSoftware ? null : adapter;
}
