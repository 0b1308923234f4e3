/** Everything of ours in Redis begins with this, so that a server can be shared. */
export const defaultPrefix = "formweek";

export const queueName = "jobs";

/** BullMQ allows neither a colon nor a bare number as a job id. */
export const jobIdOf = (key: string): string => `job-${encodeURIComponent(key)}`;

/** Set when a job is to be stopped; looked at by whoever runs it, so that a lost connection delays a stop but does not lose it. */
export const cancelKeyOf = (prefix: string, jobId: string): string => `${prefix}:cancel:${jobId}`;

export const channelOf = (prefix: string, plantId: string): string => `${prefix}:plant:${plantId}`;
