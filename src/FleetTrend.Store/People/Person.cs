using Microsoft.AspNetCore.Identity;

namespace FleetTrend.Store.People;

/// <summary>Somebody who signs in, as the identity library keeps him: his password as its hash only, wrong passwords counted.</summary>
public sealed class Person : IdentityUser<long>
{
    /// <summary>Somebody who can be locked out.</summary>
    public Person() => LockoutEnabled = true;

    /// <summary>What he may do.</summary>
    public PersonRole Role { get; set; }

    /// <summary>When he was added (UTC).</summary>
    public DateTimeOffset CreateTime { get; set; }

    /// <summary>Since when he may not sign in (UTC); null where he may.</summary>
    public DateTimeOffset? DisableTime { get; set; }
}
