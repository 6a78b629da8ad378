using FleetTrend.Intake;
using Grpc.Core;

namespace FleetTrend.Api;

/// <summary>Broken rules as the exception that ends a call.</summary>
internal static class RefusalExceptions
{
    public static RpcException ToException(this Refusal refusal) => RefusalStatus.Build(refusal).ToRpcException();

    public static RpcException ToException(this IReadOnlyList<Refusal> refusals) => RefusalStatus.Build(refusals).ToRpcException();
}
