namespace FleetTrend.Hosting.Mail;

/// <summary>The other side refuses the message for good: the same again will be refused again.</summary>
public sealed class MailRefusedException : Exception
{
    /// <summary>A refusal with what the other side said.</summary>
    public MailRefusedException(string message, Exception inner) : base(message, inner) { }

    /// <summary>Required by the exception conventions.</summary>
    public MailRefusedException(string message) : base(message) { }

    /// <summary>Required by the exception conventions.</summary>
    public MailRefusedException() { }
}
