using FleetTrend.Api;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;

return await HostProcess.RunAsync(
    args,
    (host, settings) => host.ListenAsApi(settings),
    (settings, database) => ApiHost.Build(args, settings, database),
    ApiHost.PrepareAsync);
