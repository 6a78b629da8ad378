namespace FleetTrend.Hosting.Configuration;

/// <summary>Settings that cannot be used. All of them are reported at once.</summary>
public sealed class HostSettingsException : Exception
{
    /// <summary>The message lists each error on a line of its own.</summary>
    public HostSettingsException(IReadOnlyList<SettingError> errors)
        : base(string.Join(Environment.NewLine, errors)) => Errors = errors;

    /// <summary>Required by the exception conventions.</summary>
    public HostSettingsException() { }

    /// <summary>Required by the exception conventions.</summary>
    public HostSettingsException(string message) : base(message) { }

    /// <summary>Required by the exception conventions.</summary>
    public HostSettingsException(string message, Exception inner) : base(message, inner) { }

    /// <summary>What is wrong, in the order in which the settings are read.</summary>
    public IReadOnlyList<SettingError> Errors { get; } = [];
}
