using System.Globalization;
using System.Text;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>A bay or a parking place, and what is written into it; what is absent is not written.</summary>
/// <param name="IsBay">A room with walls and a door; else a place marked on the floor.</param>
public sealed record Room(bool IsBay, string Name)
{
    public string? Registration { get; init; }

    /// <summary>The job card's number.</summary>
    public string? Card { get; init; }

    /// <summary>Maker and model.</summary>
    public string? Model { get; init; }

    public string? Phase { get; init; }

    public string? Since { get; init; }

    public string? Who { get; init; }

    public string? When { get; init; }

    public string? Tag { get; init; }

    public string? Next { get; init; }

    /// <summary>Why nothing may stand there.</summary>
    public string? Away { get; init; }
}

/// <summary>One line of writing where it stands.</summary>
/// <param name="Kind">The style of it in workshop.css.</param>
public sealed record FloorLine(string Kind, decimal X, decimal Y, string Text);

/// <summary>A room where it lies in the drawing.</summary>
/// <param name="Motorcycle">Its outline from above; empty where nothing stands there.</param>
/// <param name="TagWidth">0 where no tag hangs.</param>
public sealed record DrawnRoom(
    decimal X, decimal Y, decimal Width, decimal Height, bool Hatched, string Walls, string Marks, string Motorcycle,
    IReadOnlyList<FloorLine> Lines, decimal TagX, decimal TagY, decimal TagWidth);

/// <summary>
/// The floor from above, as a drawing office draws one: bays are rooms with walls and a gate to the aisle, parking places are
/// marked on the floor. Bays in order of name along the upper side, places along the lower. Pure geometry in the drawing's own
/// units, large enough to be read across the workshop. Shown by <c>&lt;partial name="Drawings/_Floor" model="drawing" /&gt;</c>.
/// </summary>
public sealed record FloorDrawing
{
    public const decimal Width = 1600;

    /// <summary>Height of the tag's box.</summary>
    public const decimal TagHeight = 42;

    private const decimal Margin = 12;
    private const decimal RoomHeight = 326;
    private const decimal TagTop = 236;
    private const decimal NarrowRoom = 420;
    private const decimal Aisle = 64;
    private const decimal Inset = 16;

    /// <summary>Left free for the motorcycle's outline.</summary>
    private const decimal Beside = 92;

    private const int MostBays = 4;
    private const int MostPlaces = 4;

    // A letter of the drawing's type is at most about so wide, for each unit of its size.
    private const decimal LetterWidth = 0.57m;
    private const decimal BoldLetterWidth = 0.68m;

    public required decimal Height { get; init; }

    /// <summary>The outer wall.</summary>
    public required string Outline { get; init; }

    public required IReadOnlyList<DrawnRoom> Rooms { get; init; }

    /// <param name="rooms">In the order in which they lie; at least one.</param>
    public static FloorDrawing Of(IReadOnlyList<Room> rooms)
    {
        ArgumentNullException.ThrowIfNull(rooms);
        var drawn = new List<DrawnRoom>();
        var y = Margin;
        foreach (var row in Rows(rooms.Where(r => r.IsBay).ToList(), MostBays))
        {
            Draw(drawn, row, y);
            y += RoomHeight + Aisle;
        }

        foreach (var row in Rows(rooms.Where(r => !r.IsBay).ToList(), MostPlaces))
        {
            Draw(drawn, row, y);
            y += RoomHeight;
        }

        return new FloorDrawing
        {
            Height = y + Margin,
            Outline = Text($"M{Margin} {Margin}H{Width - Margin}V{y}H{Margin}Z"),
            Rooms = drawn,
        };
    }

    /// <summary>A coordinate as SVG writes it.</summary>
    public static string Write(decimal coordinate) => coordinate.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>As many rows as are needed, as evenly filled as can be.</summary>
    private static IEnumerable<Room[]> Rows(List<Room> rooms, int most)
    {
        var rows = (rooms.Count + most - 1) / most;
        return rows == 0 ? [] : rooms.Chunk((rooms.Count + rows - 1) / rows);
    }

    private static void Draw(List<DrawnRoom> drawn, Room[] row, decimal y)
    {
        var width = (Width - (2 * Margin)) / row.Length;
        for (var i = 0; i < row.Length; i++)
        {
            drawn.Add(Draw(row[i], Margin + (i * width), y, width, RoomHeight));
        }
    }

    private static DrawnRoom Draw(Room room, decimal x, decimal y, decimal width, decimal height)
    {
        var stands = room.Registration is not null;
        var tagWidth = room.Tag is { } tag ? Math.Min(width - (2 * Inset), (Fit(tag, 26, width - 90, bold: true).Length * 26 * BoldLetterWidth) + 44) : 0;
        return new DrawnRoom(
            x, y, width, height,
            room.Away is not null,
            room.IsBay ? Walls(x, y, width, height) : "",
            room.IsBay ? Gate(x, y, width, height) : FloorMarks(x, y, width, height),
            stands ? Motorcycle(x + width - 58, y + 70) : "",
            Lines(room, x + Inset, y, width - (2 * Inset), height),
            x + Inset, y + TagTop, tagWidth);
    }

    private static FloorLine[] Lines(Room room, decimal x, decimal y, decimal width, decimal height)
    {
        var lines = new List<FloorLine>();
        Add("name", 0, 34, 26, room.Card is null ? room.Name : $"{room.Name} · card {room.Card}", width);
        if (room.Registration is { } registration)
        {
            var narrow = width < NarrowRoom;
            Add("registration", 0, 84, 48, registration, width - Beside);
            Add("plain", 0, 114, 26, room.Model, width - Beside);
            Add(narrow ? "phase narrow" : "phase", 0, 154, narrow ? 28 : 33, room.Phase, width - Beside);
            Add("plain", 0, 188, 28, Both(room.Since, room.Who), width - Beside);
            Add("plain", 0, 222, 28, room.When, width);
            Add("tag", 16, TagTop + 29, 26, room.Tag, width - 58);
        }
        else
        {
            Add("plain", 0, 84, 28, room.Away ?? "empty", width);
        }

        Add(width < NarrowRoom ? "next small" : "next", 0, height - 22, width < NarrowRoom ? 24 : 28, room.Next, width);
        return [.. lines];

        void Add(string kind, decimal dx, decimal dy, decimal size, string? text, decimal room)
        {
            if (!string.IsNullOrEmpty(text))
            {
                lines.Add(new FloorLine(kind, x + dx, y + dy, Fit(text, size, room, kind is not ("name" or "plain" or "next" or "next small"))));
            }
        }
    }

    private static string? Both(string? one, string? other) =>
        string.Join(" · ", new[] { one, other }.Where(s => !string.IsNullOrEmpty(s)));

    private static string Fit(string text, decimal size, decimal width, bool bold)
    {
        var letters = (int)(width / (size * (bold ? BoldLetterWidth : LetterWidth)));
        return text.Length <= letters ? text : $"{text[..Math.Max(1, letters - 1)]}…";
    }

    /// <summary>Three walls, and stubs beside the gate.</summary>
    private static string Walls(decimal x, decimal y, decimal width, decimal height)
    {
        var stub = width * 0.12m;
        return Text($"M{x + stub} {y + height}H{x}V{y}H{x + width}V{y + height}H{x + width - stub}");
    }

    /// <summary>A roller gate in its opening: dashed, with its two guides.</summary>
    private static string Gate(decimal x, decimal y, decimal width, decimal height)
    {
        var stub = width * 0.12m;
        return Text($"M{x + stub} {y + height - 6}v12M{x + width - stub} {y + height - 6}v12");
    }

    /// <summary>Corners of a place, painted on the floor.</summary>
    private static string FloorMarks(decimal x, decimal y, decimal width, decimal height)
    {
        const decimal Arm = 34;
        var (left, right, top, bottom) = (x + 8, x + width - 8, y + 6, y + height - 6);
        return Text($"M{left} {top + Arm}V{top}h{Arm}M{right - Arm} {top}H{right}v{Arm}M{right} {bottom - Arm}V{bottom}h-{Arm}M{left + Arm} {bottom}H{left}v-{Arm}");
    }

    /// <summary>A motorcycle from above, its front wheel towards the wall: two wheels, fork, handlebar, tank and seat.</summary>
    private static string Motorcycle(decimal x, decimal y)
    {
        var path = new StringBuilder();
        path.Append(Text($"M{x - 6} {y - 26}q6 -8 12 0v30q-6 8 -12 0z"));
        path.Append(Text($"M{x - 7} {y + 84}q7 -8 14 0v32q-7 8 -14 0z"));
        path.Append(Text($"M{x - 30} {y + 20}l10 -8h40l10 8M{x} {y + 6}v8"));
        path.Append(Text($"M{x - 13} {y + 26}q13 -14 26 0q4 18 -4 30h-18q-8 -12 -4 -30z"));
        path.Append(Text($"M{x - 9} {y + 58}h18l3 26q-12 8 -24 0z"));
        return path.ToString();
    }

    private static string Text(FormattableString path) => path.ToString(CultureInfo.InvariantCulture);
}
