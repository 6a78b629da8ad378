namespace FleetTrend.Store.Keys;

/// <summary>A key that was just made: the one moment in which its text is known.</summary>
/// <param name="Key">As stored.</param>
/// <param name="Text">What the caller sends. Secret: never log it.</param>
public sealed record NewKey(ApiKey Key, string Text)
{
    /// <summary>Without the secret.</summary>
    public override string ToString() => $"key {Key.Id}";
}
