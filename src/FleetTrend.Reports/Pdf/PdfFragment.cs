namespace FleetTrend.Reports.Pdf;

/// <summary>A piece of a word that is set in one way.</summary>
/// <param name="Text">Its letters, without blanks.</param>
/// <param name="IsStrong">Whether it is set bold.</param>
/// <param name="Target">Where it leads; null where it is no link.</param>
internal readonly record struct PdfFragment(string Text, bool IsStrong, Uri? Target);
