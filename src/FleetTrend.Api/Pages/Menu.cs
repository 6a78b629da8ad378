namespace FleetTrend.Api.Pages;

/// <summary>The pages in groups: the first of each stands in the head of every page, the others below it on the pages of the group.</summary>
internal static class Menu
{
    /// <summary>All groups.</summary>
    public static IReadOnlyList<MenuGroup> Groups { get; } =
    [
        new("This week", [new("/", "This week"), new("/schedules", "Report schedules")]),
        new("Aircraft", [new("/aircraft", "All aircraft"), new("/open", "Open now"), new("/due", "Due"), new("/levels", "Who runs high")]),
        new("Locations",
        [
            new("/locations", "Where it happens"), new("/repairs", "Does the repair hold?"), new("/growth", "Worse or better?"),
            new("/positions", "Cylinder and side"), new("/shrouds", "Shroud and bolts"), new("/leaks", "Leak to eroded face"),
        ]),
        new("Parts",
        [
            new("/parts", "How long parts last"), new("/part-numbers", "Which part number"), new("/chances", "Chance before the next look"),
            new("/renewal", "When to renew"), new("/spares", "Spares"),
        ]),
        new("Calls", [new("/flags", "Flags"), new("/effects", "Did it help?"), new("/score", "How right were we?"), new("/backtest", "Back-test")]),
        new("Records",
        [
            new("/data-problems", "Data problems"), new("/silent", "No word from"), new("/too-quiet", "Too quiet?"), new("/held-records", "Held records"),
            new("/merges", "Merged findings"),
        ]),
        new("Settings", [new("/parameters", "Parameters"), new("/people", "People")]),
    ];

    /// <summary>The group to which the page at a path belongs; null where none does.</summary>
    public static MenuGroup? GroupOf(PathString path) =>
        Groups.FirstOrDefault(g => g.Pages.Any(p => p.Path == "/" ? path == "/" : path.StartsWithSegments(p.Path, StringComparison.Ordinal)));
}
