// Loaded into the server before anything else: without the one who started it nobody could end it any more, and it
// would hold its port. Even a starter that was killed closes this channel.
process.once('disconnect', () => process.kill(process.pid, 'SIGTERM'));
