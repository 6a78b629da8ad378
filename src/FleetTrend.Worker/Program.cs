using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Worker;

return await HostProcess.RunAsync(
    args,
    (host, settings) => host.ListenAsWorker(settings),
    (settings, database) => WorkerHost.Build(args, settings, database),
    WorkerHost.PrepareAsync);
