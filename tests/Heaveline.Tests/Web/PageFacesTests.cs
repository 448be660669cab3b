using System.Buffers.Binary;
using System.IO.Compression;
using System.Net;
using System.Text;
using Heaveline.Press;
using Heaveline.Tests.House;
using Heaveline.Web.Frame;
using Heaveline.Web.Host;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

/// <summary>The pages' faces as browsers load them, held against "WOFF File Format 2.0", W3C Recommendation, 8 August 2024, 4 and 5.</summary>
public sealed class PageFacesTests
{
    [Theory]
    [InlineData("Regular")]
    [InlineData("Bold")]
    [InlineData("Italic")]
    public void Every_table_of_a_face_comes_out_of_its_compressed_form_as_it_went_in(string face)
    {
        var whole = Bytes(face);
        var made = CompressedFace.Of(whole);
        Assert.Equal("wOF2", Encoding.ASCII.GetString(made.AsSpan(0, 4)));
        Assert.Equal((uint)made.Length, Whole(made, 8));
        Assert.True(made.Length < 0.6 * whole.Length);
        var count = BinaryPrimitives.ReadUInt16BigEndian(made.AsSpan(12));
        Assert.Equal(BinaryPrimitives.ReadUInt16BigEndian(whole.AsSpan(4)), count);
        string[] known = ["cmap", "head", "hhea", "hmtx", "maxp", "name", "OS/2", "post", "cvt ", "fpgm", "glyf", "loca", "prep"];
        var at = 48;
        var named = new List<(string Tag, int Length)>();
        for (var i = 0; i < count; i++)
        {
            var (index, transform) = (made[at] & 63, made[at] >> 6);
            at++;
            var tag = index < known.Length ? known[index] : index == 63 ? Encoding.ASCII.GetString(made.AsSpan(at, 4)) : $"of place {index}";
            at += index == 63 ? 4 : 0;
            Assert.Equal(tag is "glyf" or "loca" ? 3 : 0, transform);
            var length = 0;
            do
            {
                length = (length << 7) | (made[at] & 127);
            }
            while (made[at++] >= 128);
            named.Add((tag, length));
        }

        Assert.Equal(named.FindIndex(one => one.Tag == "glyf") + 1, named.FindIndex(one => one.Tag == "loca"));
        Assert.Equal(Whole(made, 16), (uint)(12 + (16 * count) + named.Sum(one => (one.Length + 3) / 4 * 4)));
        using var packed = new BrotliStream(new MemoryStream(made, at, (int)Whole(made, 20)), CompressionMode.Decompress);
        using var all = new MemoryStream();
        packed.CopyTo(all);
        var (tables, from) = (all.ToArray(), 0);
        Assert.Equal(tables.Length, named.Sum(one => one.Length));
        foreach (var (tag, length) in named)
        {
            var (place, size) = TableOf(whole, tag);
            Assert.Equal(size, length);
            Assert.True(whole.AsSpan(place, size).SequenceEqual(tables.AsSpan(from, length)), tag);
            from += length;
        }
    }

    [Fact]
    public void What_is_no_face_is_not_compressed()
    {
        Assert.Throws<InvalidDataException>(() => CompressedFace.Of(new byte[3]));
        Assert.Throws<InvalidDataException>(() => CompressedFace.Of(new byte[300]));
    }

    [Fact]
    public async Task The_faces_are_fetched_once_by_the_names_in_the_sheet_that_every_page_links_to()
    {
        await using var host = PageHost.Of(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage"), Port = 0 });
        await host.StartAsync(TestContext.Current.CancellationToken);
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(host) };
        var page = await client.GetStringAsync("/", TestContext.Current.CancellationToken);
        Assert.Contains($"<link rel=\"stylesheet\" href=\"{PageFaces.Sheet}\"", page);
        using var sheet = await client.GetAsync(PageFaces.Sheet, TestContext.Current.CancellationToken);
        Assert.Equal("max-age=31536000, immutable", sheet.Headers.GetValues("Cache-Control").Single());
        var names = (await sheet.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))
            .Split("url(\"").Skip(1).Select(rest => rest[..rest.IndexOf('"', StringComparison.Ordinal)]).ToArray();
        Assert.Equal(3, names.Length);
        foreach (var name in names)
        {
            using var face = await client.GetAsync($"lettering/{name}", TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, face.StatusCode);
            Assert.Equal("font/woff2", face.Content.Headers.ContentType!.MediaType);
            Assert.Equal("max-age=31536000, immutable", face.Headers.GetValues("Cache-Control").Single());
        }
    }

    private static uint Whole(byte[] bytes, int at) => BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at));

    private static (int Place, int Size) TableOf(byte[] face, string tag)
    {
        for (var entry = 12; ; entry += 16)
        {
            if (Encoding.ASCII.GetString(face.AsSpan(entry, 4)) == tag)
            {
                return ((int)Whole(face, entry + 8), (int)Whole(face, entry + 12));
            }
        }
    }

    private static byte[] Bytes(string face)
    {
        using var stream = typeof(Svg).Assembly.GetManifestResourceStream($"Heaveline.Press.Fonts.HeavelineSans-{face}.ttf")!;
        using var read = new MemoryStream();
        stream.CopyTo(read);
        return read.ToArray();
    }
}
