using FleetTrend.Reports.Fonts;
using ScottPlot;

namespace FleetTrend.Reports.Plots;

/// <summary>A plot of a report: what it shows in words and as a drawing. The same plot gives the same bytes.</summary>
public abstract class ReportPlot
{
    /// <summary>Width in CSS pixels.</summary>
    public const int Width = 640;

    private const int PngScale = 2;

    private protected ReportPlot(string name, string altText, string caption)
    {
        ShippedFonts.Ensure();
        Name = name;
        AltText = altText;
        Caption = caption;
    }

    /// <summary>Short name without blanks, unique in a report.</summary>
    public string Name { get; }

    /// <summary>File name of the bitmap, used as content identifier in a mail.</summary>
    public string PngName => Name + ".png";

    /// <summary>What the plot shows, for those who cannot see it.</summary>
    public string AltText { get; }

    /// <summary>The line below it: what it shows, counts, method, as-of date.</summary>
    public string Caption { get; }

    /// <summary>Height in CSS pixels.</summary>
    public abstract int Height { get; }

    /// <summary>The plot as a PNG, twice its size in CSS pixels so that it stays sharp in print.</summary>
    public byte[] RenderPng()
    {
        using var plot = Draw();
        plot.ScaleFactor = PngScale;
        return plot.GetImageBytes(Width * PngScale, Height * PngScale, ImageFormat.Png);
    }

    /// <summary>The plot as SVG.</summary>
    public string RenderSvg()
    {
        using var plot = Draw();
        return plot.GetSvgXml(Width, Height);
    }

    /// <summary>The drawing with its data; whoever asks disposes of it.</summary>
    internal abstract Plot Draw();
}
