using PdfSharp.Fonts;

namespace Workshop.Web.Features.Paper;

/// <summary>
/// The font that PDFs carry in themselves, read from this machine: DejaVu Sans, which Debian has as fonts-dejavu-core. Nothing is
/// put in its place: another font would have other widths and lack signs.
/// </summary>
internal sealed class PaperFonts : IFontResolver
{
    public const string Family = "DejaVu Sans";
    public const string Setting = "Workshop:FontFolder";

    public const string Missing =
        "PDFs need the font DejaVu Sans, which this machine lacks. As root, run: apt-get update && apt-get install --yes --no-install-recommends fonts-dejavu-core. The pages themselves print without it.";

    private const string Plain = "DejaVuSans.ttf";
    private const string Strong = "DejaVuSans-Bold.ttf";

    /// <summary>Where Debian, Fedora and Arch put it.</summary>
    private static readonly string[] Folders =
        ["/usr/share/fonts/truetype/dejavu", "/usr/share/fonts/dejavu-sans-fonts", "/usr/share/fonts/TTF", "/usr/share/fonts/dejavu"];

    private static readonly Lock Once = new();

    private readonly string folder;

    private PaperFonts(string folder) => this.folder = folder;

    /// <summary>Makes the fonts known to the maker of PDFs, once; false where they are not there.</summary>
    /// <param name="configured">Where the settings say they are.</param>
    public static bool AreThere(string? configured)
    {
        lock (Once)
        {
            if (Find(configured) is not { } found)
            {
                return false;
            }

            GlobalFontSettings.FontResolver ??= new PaperFonts(found);
            return true;
        }
    }

    /// <summary>The folder that has both; a configured one is the only one looked at.</summary>
    public static string? Find(string? configured) =>
        (string.IsNullOrEmpty(configured) ? Folders : [configured])
        .FirstOrDefault(f => File.Exists(Path.Combine(f, Plain)) && File.Exists(Path.Combine(f, Strong)));

    public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? Strong : Plain);

    public byte[] GetFont(string faceName) => File.ReadAllBytes(Path.Combine(folder, faceName));
}
