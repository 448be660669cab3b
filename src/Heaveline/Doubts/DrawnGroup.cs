using Heaveline.Pieces;

namespace Heaveline.Doubts;

/// <summary>What came of some draws that follow one another: a piece of a study of doubts, and its answer.</summary>
/// <param name="Errors">The errors of each draw.</param>
/// <param name="Refused">How many cars that could not be were drawn before each.</param>
/// <param name="Numbers">The numbers of each car, shape (cars)(draws)(numbers); empty where its run gave none.</param>
internal sealed record DrawnGroup(IReadOnlyList<double>[] Errors, int[] Refused, double[][][] Numbers)
{
    /// <summary>The piece of some draws.</summary>
    /// <param name="first">The first draw.</param>
    /// <param name="count">How many.</param>
    public static byte[] Piece(int first, int count)
    {
        var writer = new PieceWriter();
        writer.Whole(first);
        writer.Whole(count);
        return writer.ToArray();
    }

    /// <summary>Which draws a piece is of.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static (int First, int Count) Of(byte[] piece)
    {
        var reader = new PieceReader(piece);
        var (first, count) = (reader.Whole(), reader.Whole());
        reader.End();
        return (first, count);
    }

    /// <summary>The answer as bytes.</summary>
    public byte[] ToBytes()
    {
        var writer = new PieceWriter();
        writer.Whole(Errors.Length);
        foreach (var (errors, refused) in Errors.Zip(Refused))
        {
            writer.Numbers([.. errors]);
            writer.Whole(refused);
        }

        writer.Whole(Numbers.Length);
        foreach (var numbers in Numbers.SelectMany(car => car))
        {
            writer.Numbers(numbers);
        }

        return writer.ToArray();
    }

    /// <summary>The answer of some bytes.</summary>
    /// <exception cref="FormatException">They are none.</exception>
    public static DrawnGroup OfBytes(byte[] bytes)
    {
        var reader = new PieceReader(bytes);
        var draws = reader.Count(2 * sizeof(int));
        var (errors, refused) = (new IReadOnlyList<double>[draws], new int[draws]);
        for (var k = 0; k < draws; k++)
        {
            errors[k] = reader.Numbers();
            refused[k] = reader.Whole();
        }

        var cars = new double[reader.Count(draws * sizeof(int))][][];
        for (var car = 0; car < cars.Length; car++)
        {
            cars[car] = new double[draws][];
            for (var k = 0; k < draws; k++)
            {
                cars[car][k] = reader.Numbers();
            }
        }

        reader.End();
        return new DrawnGroup(errors, refused, cars);
    }
}
