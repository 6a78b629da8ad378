namespace FleetTrend.Store.Outbox;

/// <summary>How far a mail is.</summary>
public enum MailState
{
    /// <summary>It is tried until it is sent or given up.</summary>
    Owed = 1,

    /// <summary>The mail server has taken it.</summary>
    Sent = 2,

    /// <summary>Refused for good, or not taken for too long; tried again only when somebody asks.</summary>
    GivenUp = 3,
}
