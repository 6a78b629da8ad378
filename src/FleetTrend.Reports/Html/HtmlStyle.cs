namespace FleetTrend.Reports.Html;

/// <summary>Inline styles: mail programs drop style sheets, so each element carries its own.</summary>
internal static class HtmlStyle
{
    public const string Font = "font-family:'DejaVu Sans',Verdana,'Segoe UI',Helvetica,Arial,sans-serif;";
    public const string Page = "margin:0;padding:0;background:#ffffff;color:#1f2933;" + Font + "font-size:15px;line-height:1.5;";
    public const string Frame = "max-width:720px;margin:0 auto;padding:16px;color:#1f2933;" + Font + "font-size:15px;line-height:1.5;";
    public const string Title = "margin:0 0 8px 0;font-size:22px;line-height:1.25;font-weight:bold;color:#12263a;";
    public const string Heading = "margin:30px 0 10px 0;padding:0 0 4px 0;border-bottom:2px solid #12263a;font-size:18px;line-height:1.3;font-weight:bold;color:#12263a;";
    public const string SubHeading = "margin:16px 0 4px 0;font-size:15px;font-weight:bold;color:#12263a;";
    public const string Paragraph = "margin:0 0 8px 0;";
    public const string Aside = "margin:0 0 12px 0;font-size:13px;color:#4a5560;";
    public const string Notice = "margin:0 0 12px 0;padding:6px 10px;border:2px dashed #12263a;font-weight:bold;";
    public const string Caution = "margin:0 0 12px 0;padding:8px 10px;border-left:4px solid #9a3412;background:#fdf3ec;font-size:14px;color:#1f2933;";
    public const string List = "margin:0 0 10px 0;padding:0 0 0 22px;";
    public const string Item = "margin:0 0 5px 0;";
    public const string Card = "margin:0 0 14px 0;padding:12px 14px;border:1px solid #9aa5b1;border-left:5px solid #12263a;";
    public const string CardHeading = "margin:0 0 6px 0;font-size:17px;line-height:1.3;font-weight:normal;color:#12263a;";
    public const string Badge = "display:inline-block;margin-left:8px;padding:1px 7px;border:1px solid #12263a;font-size:12px;font-weight:bold;letter-spacing:0.04em;vertical-align:middle;";
    public const string BadgeNew = Badge + "background:#12263a;color:#ffffff;";
    public const string Scroll = "overflow-x:auto;margin:0 0 12px 0;";
    public const string Table = "border-collapse:collapse;width:100%;font-size:13px;line-height:1.4;";
    public const string TableCaption = "caption-side:top;text-align:left;padding:0 0 6px 0;font-size:13px;color:#4a5560;";
    public const string ColumnHeading = "padding:5px 8px;border-bottom:2px solid #52606d;text-align:left;vertical-align:bottom;font-weight:bold;";
    public const string RowHeading = "padding:5px 8px;border-bottom:1px solid #cbd2d9;text-align:left;vertical-align:top;font-weight:bold;";
    public const string Cell = "padding:5px 8px;border-bottom:1px solid #cbd2d9;text-align:left;vertical-align:top;";
    public const string Right = "text-align:right;";
    public const string Small = "font-size:12px;color:#4a5560;";
    public const string Method = "font-size:11px;color:#4a5560;text-decoration:none;";
    public const string Figure = "margin:12px 0 14px 0;";
    public const string Image = "display:block;width:640px;max-width:100%;height:auto;border:0;";
    public const string Link = "color:#0b4f8a;text-decoration:underline;";

    /// <summary>For programs that keep it: print, narrow screens.</summary>
    public const string Sheet =
        "@page{margin:14mm}"
        + "@media print{.ft-frame{max-width:none!important;padding:0!important;font-size:9.5pt!important}"
        + ".ft-plot img,.ft-plot svg{width:140mm!important;height:auto!important}"
        + ".ft-card,.ft-plot,tr{break-inside:avoid;page-break-inside:avoid}"
        + "h2,h3{break-after:avoid;page-break-after:avoid}thead{display:table-header-group}"
        + ".ft-scroll{overflow:visible!important}a{color:#000!important}"
        + ".ft-new{background:#fff!important;color:#000!important;border-width:3px!important}}"
        + "@media (max-width:520px){.ft-frame{padding:10px!important}}";
}
