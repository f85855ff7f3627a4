/** Version of the engine. Within one, a job's report is equal to the byte on every host; any change of a figure raises it. */
export const ENGINE_VERSION = '1.5.0'
