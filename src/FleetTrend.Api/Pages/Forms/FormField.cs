using FleetTrend.Intake;

namespace FleetTrend.Api.Pages.Forms;

/// <summary>One field of a form, with what was typed and what is wrong with it.</summary>
internal sealed record FormField
{
    /// <summary>Name of its form: names of fields come more than once on a page.</summary>
    public required string Form { get; init; }

    /// <summary>Its name, as the contract calls it.</summary>
    public required string Name { get; init; }

    /// <summary>What it asks for.</summary>
    public required string Label { get; init; }

    /// <summary>The rule, said beforehand.</summary>
    public string Hint { get; init; } = "";

    /// <summary>What was typed; empty on a fresh form.</summary>
    public string Value { get; init; } = "";

    /// <summary>The rules that it broke.</summary>
    public IReadOnlyList<Refusal> Refusals { get; init; } = [];

    /// <summary>Whether it may be left empty.</summary>
    public bool IsOptional { get; init; }

    /// <summary>The kind of input, as HTML calls it, where it takes one line.</summary>
    public string Type { get; init; } = "text";

    /// <summary>What the browser may fill in, as HTML calls it; null for what it likes.</summary>
    public string? Autocomplete { get; init; }

    /// <summary>Whether it takes several lines.</summary>
    public bool IsLong { get; init; }

    /// <summary>What can be chosen, value and words; null where it is typed.</summary>
    public IReadOnlyList<(string Value, string Words)>? Choices { get; init; }

    /// <summary>What stands where nothing is chosen.</summary>
    public string NoChoice { get; init; } = "Choose one";

    /// <summary>Its identifier on the page.</summary>
    public string Id => $"{Form}-{Name.Replace('.', '-')}";

    /// <summary>What describes it, for screen readers.</summary>
    public string? DescribedBy
    {
        get
        {
            List<string> ids = [];
            if (Hint.Length > 0)
                ids.Add(Id + "-hint");
            if (Refusals.Count > 0)
                ids.Add(Id + "-error");
            return ids.Count == 0 ? null : string.Join(' ', ids);
        }
    }
}
