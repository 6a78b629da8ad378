using System.Net.Http.Headers;

namespace FleetTrend.IntegrationTests;

/// <summary>Sends a key with every request, or none.</summary>
internal sealed class KeySender(string? key, HttpMessageHandler inner) : DelegatingHandler(inner)
{
    protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        if (key is not null)
            request.Headers.Authorization ??= new AuthenticationHeaderValue("Bearer", key);
        return base.SendAsync(request, cancellationToken);
    }
}
