namespace FleetTrend.IntegrationTests;

/// <summary>Where the tests' PostgreSQL comes from.</summary>
public enum PostgresKind
{
    /// <summary>A container that Testcontainers starts.</summary>
    Container,

    /// <summary>Server programs on this machine, run as the product runs them for itself.</summary>
    Local,

    /// <summary>A running server, given in FLEETTREND_TEST_DATABASE.</summary>
    Given,
}
