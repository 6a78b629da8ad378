using System.Globalization;
using FleetTrend.Intake;
using FleetTrend.Store;
using Grpc.Core;

namespace FleetTrend.Api;

/// <summary>Page sizes and tokens of lists.</summary>
internal static class Paging
{
    /// <summary>The size to use: 0 takes the default, too many takes the most, below 0 is refused.</summary>
    public static int Size(int asked, int most, int defaultSize = 50)
    {
        if (asked < 0)
        {
            throw new Refusal("page_size", asked.ToString(CultureInfo.InvariantCulture), Reasons.NumberOutOfRange,
                $"must be 0, which means {defaultSize}, or more, where more than {most:#,0} means {most:#,0}")
            { IsBare = true }.ToException();
        }

        return asked == 0 ? defaultSize : Math.Min(asked, most);
    }

    /// <summary>A page of a list of the store.</summary>
    public static async Task<Page<T>> ReadAsync<T>(string token, Func<Task<Page<T>>> list)
    {
        try
        {
            return await list();
        }
        catch (FormatException)
        {
            throw InvalidToken(token);
        }
    }

    /// <summary>The answer to a token that this call did not give for these fields.</summary>
    public static RpcException InvalidToken(string token) =>
        new Refusal("page_token", token.Length > 40 ? token[..40] : token, Reasons.PageTokenInvalid,
            "must be empty, or the next_page_token of the same call with the same fields").ToException();
}
