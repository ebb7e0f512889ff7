/** Version of the engine that makes the numbers; results of one version can be repeated with it. */
export const ENGINE_VERSION = '0.1.0'
