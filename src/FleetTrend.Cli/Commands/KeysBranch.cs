using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>The commands that make, list and revoke keys, for whoever runs the server.</summary>
internal static class KeysBranch
{
    /// <summary>Adds them.</summary>
    public static void Add(IConfigurator config) => config.AddBranch("keys", keys =>
    {
        keys.SetDescription("Makes, lists and revokes keys in the database: the local one, or that of FLEETTREND_DATABASE.");
        keys.AddCommand<KeysCreateCommand>("create")
            .WithDescription("Makes a key and shows it, this once.")
            .WithExample("keys", "create", "shop-tablet", "--scope", "records-write", "--source", "shop-cards")
            .WithExample("keys", "create", "director", "--scope", "trends-read", "--scope", "administer");
        keys.AddCommand<KeysListCommand>("list")
            .WithDescription("Lists keys, revoked ones included.");
        keys.AddCommand<KeysRevokeCommand>("revoke")
            .WithDescription("Revokes a key for ever; servers know within seconds.")
            .WithExample("keys", "revoke", "abcdefghijkl");
    });
}
