namespace FleetTrend.Trends.RenewalAges;

/// <summary>Whether renewing parts of a kind by age helps.</summary>
public enum RenewalFinding
{
    /// <summary>Too few failures to say anything.</summary>
    NotKnown = 0,

    /// <summary>It may help or not: the failures do not tell, or they leave no age within those that were watched.</summary>
    NotShown = 1,

    /// <summary>It does not help: an old part fails no sooner than a new one, or too little sooner to save anything worth while.</summary>
    DoesNotWearOut = 2,

    /// <summary>It helps: renewing at the age costs less than running to failure.</summary>
    Renew = 3,
}
