using Heaveline.Quantities;

namespace Heaveline.Drives.Planning;

/// <summary>
/// One raised place of a row of planks, alike in both wheel tracks: boards across the track side by side, or along it, in one layer or two. No edge
/// cuts a tyre or throws the wheel off the road: a single board across has its edges bevelled at 45°, of several the first and the last are planed to
/// a wedge over their width, and boards along the track have their ends sawn to a wedge.
/// </summary>
public sealed record LaidBoards
{
    /// <summary>Width of a track that carries a tyre with some room to wander, m. Common practice, no source.</summary>
    public const double TrackWidth = 0.4;

    /// <summary>Length of a piece that lies across a track, m. Common practice, no source.</summary>
    public const double PieceAcross = 0.6;

    /// <summary>Where it begins, m.</summary>
    public required double Start { get; init; }

    /// <summary>How far it goes along the road, bevels included, m.</summary>
    public required double Length { get; init; }

    /// <summary>Boards on one another, 1 to 4.</summary>
    public required int Layers { get; init => field = (int)Checked.Within(value, 1.0, 4.0, "Stack at most four boards."); }

    /// <summary>The board.</summary>
    public required BoardSize Size { get; init; }

    /// <summary>Whether the boards lie along the road; else across it, so many side by side as the length holds widths.</summary>
    public required bool IsAlong { get; init; }

    /// <summary>Height, m.</summary>
    public double Height => Layers * Size.Thickness;

    /// <summary>How far each edge takes to rise or fall, m.</summary>
    public required double Edge { get; init => field = Checked.Within(value, 1e-3, 10.0, "Give how far an edge takes to rise."); }

    /// <summary>Where it ends, m.</summary>
    public double End => Start + Length;

    /// <summary>Boards side by side in each layer of one track.</summary>
    public int SideBySide => IsAlong ? (int)Math.Ceiling((TrackWidth / Size.Width) - 1e-9) : (int)Math.Round(Length / Size.Width);

    /// <summary>Length that each piece is cut to, m.</summary>
    public double Piece => IsAlong ? Length : PieceAcross;

    /// <summary>Pieces for one track.</summary>
    public int Pieces => SideBySide * Layers;
}
