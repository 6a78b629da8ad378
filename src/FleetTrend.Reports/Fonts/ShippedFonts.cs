using ScottPlot;
using SkiaSharp;

namespace FleetTrend.Reports.Fonts;

/// <summary>DejaVu Sans from this assembly's resources, so that a plot looks the same on every machine.</summary>
public sealed class ShippedFonts : IFontResolver
{
    /// <summary>Family name under which plots ask for it.</summary>
    public const string Family = "DejaVu Sans";

    private static readonly Lazy<bool> Registration = new(Register);

    /// <summary>Its upright letters.</summary>
    internal static SKTypeface Regular { get; } = Load("DejaVuSans.ttf");

    /// <summary>Its bold letters.</summary>
    internal static SKTypeface Bold { get; } = Load("DejaVuSans-Bold.ttf");

    private ShippedFonts()
    {
    }

    /// <summary>Makes the fonts known to the plot library, once in the life of the process.</summary>
    public static void Ensure() => _ = Registration.Value;

    /// <inheritdoc/>
    public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
        CreateTypeface(fontName, weight >= FontWeight.SemiBold, slant != FontSlant.Upright);

    /// <inheritdoc/>
    public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
        fontName != Family ? null : bold ? Bold : Regular;

    private static bool Register()
    {
        ScottPlot.Fonts.FontResolvers.Insert(0, new ShippedFonts());
        ScottPlot.Fonts.Default = Family;
        return true;
    }

    private static SKTypeface Load(string name)
    {
        using var stream = typeof(ShippedFonts).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is not in the assembly.");
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data);
    }
}
