using CsCheck;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Gallery;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Tests;

public class FloorLayouts
{
    private static readonly string[] Words =
        ["Engine", "in", "Crossmember", "off", "wet", "test", "Heron", "coupé", "accumulator", "to", "bulkhead", "pick-up", "Ž", "×4", "2,000"];

    private static readonly Gen<string> Text = Gen.OneOf([.. Words.Select(Gen.Const)]).Array[1, 6].Select(words => string.Join(' ', words));

    [Fact]
    public void Type_is_31_and_25_px_capitals_at_4_m_on_65_inches()
    {
        var sheet = FloorSheet.Default;

        Assert.InRange(sheet.NamesType * FloorFace.CapitalHeight, 31, 33);
        Assert.InRange(sheet.RestType * FloorFace.CapitalHeight, 24.8, 27);
    }

    [Fact]
    public void Type_doubles_at_twice_the_distance()
    {
        Assert.InRange(FloorSheet.For(8, 65).NamesType, 93, 95);
    }

    [Fact]
    public void Stylesheet_has_the_layout_s_line_heights()
    {
        var css = File.ReadAllText(Path.Combine(Sources.Web, "wwwroot", "css", "floor-sizes.css"));

        foreach (var type in Enumerable.Range(FloorSheet.LeastType, FloorSheet.MostType - FloorSheet.LeastType + 1))
        {
            var sheet = new FloorSheet(type, type);
            Assert.Contains($".floor.names-{type} {{ --names-type: {type}; --names-line: {sheet.NamesLine}; }}", css);
            Assert.Contains($".floor.rest-{type} {{ --rest-type: {type}; --rest-line: {sheet.RestLine}; }}", css);
        }
    }

    [Theory]
    [InlineData("usual")]
    [InlineData("crowded")]
    [InlineData("calm")]
    [InlineData("empty")]
    public void Nothing_overlaps_or_leaves_its_place_on_samples(string name)
    {
        Check(FloorLayout.Arrange(FloorSamples.Named(name), FloorSheet.Default));
    }

    [Fact]
    public void Nothing_overlaps_or_leaves_its_place_on_any_wall()
    {
        View.Select(Gen.Double[2, 9]).Sample((view, metres) => Check(FloorLayout.Arrange(view, FloorSheet.For(metres, 65))), iter: 400);
    }

    [Fact]
    public void Stop_danger_and_work_in_hand_come_before_what_can_start()
    {
        var crowded = FloorLayout.Arrange(FloorSamples.Named("crowded"), FloorSheet.Default);
        var bay = crowded.Places.Single(place => place.Place.Id == "bay-1");

        Assert.All(bay.Pages, page => Assert.Contains(page, block => block.Id == "danger-h1"));
        Assert.Contains(bay.Pages[0], block => block.Id == "task-t1");
        Assert.DoesNotContain(bay.Pages[0], block => block.Id.StartsWith("next-", StringComparison.Ordinal));
        Assert.True(bay.Pages.Length > 1 && bay.Pages[0].Any(block => block.Rows.Any(row => row.Text.EndsWith($"1/{bay.Pages.Length}", StringComparison.Ordinal))));
    }

    [Fact]
    public void Signs_of_every_danger_are_on_every_page()
    {
        var place = FloorSamples.Named("crowded").Places[2] with { Dangers = [new("cap-off", "Coolant cap off", [SafetySignKind.W017]), new("stands", "Car on stands", [SafetySignKind.W001])] };
        var drawing = FloorLayout.Arrange(FloorSamples.Usual with { Places = [place] }, FloorSheet.Default).Places.Single();

        Assert.True(drawing.Pages.Length > 1);
        Assert.All(drawing.Pages, page => Assert.Equal(2, page.Single(block => block.Id == "signs").Marks.Length));
        Assert.Single(drawing.Pages, page => page.Any(block => block.Rows.Any(row => row.Text.Contains("Coolant cap", StringComparison.Ordinal))));
    }

    [Fact]
    public void Everything_of_a_place_is_on_some_page_or_counted()
    {
        View.Select(Gen.Double[2, 9]).Sample((view, metres) => FloorLayout.Arrange(view, FloorSheet.For(metres, 65)).Places.All(IsWhole), iter: 200);

        static bool IsWhole(FloorPlaceDrawing place)
        {
            var written = place.Pages.SelectMany(page => page).Select(block => block.Id).ToHashSet();
            var wanted = place.Place.InHand.Select(task => $"task-{task.Id}").Concat(place.Place.Stops.Select(stop => $"stop-{stop.Id}"));
            return wanted.Count(id => !written.Contains(id)) <= place.More;
        }
    }

    [Fact]
    public void Corner_is_painted_as_wide_as_its_text()
    {
        var view = FloorSamples.Usual with { Places = [new() { Id = "b", Name = "Electrical bench", Kind = FloorPlaceKind.Corner, Area = new(2, 2, 1, 1) }] };
        var corner = FloorLayout.Arrange(view, FloorSheet.Default).Places.Single();

        Assert.All(Boxes(corner), box => Assert.True(corner.Edge.Contains(box)));
    }

    [Fact]
    public void Who_has_not_heard_is_on_the_wall_whole()
    {
        var drawing = FloorLayout.Arrange(FloorSamples.Usual, FloorSheet.Default);

        Assert.Contains(drawing.StopPages[0][0].Lines, line => line.Text == "not heard yet: Mirek and Tove" && line.Style == FloorStyle.Name);
    }

    [Fact]
    public void Every_car_is_on_exactly_one_page()
    {
        var view = FloorSamples.Named("crowded");
        var shown = FloorLayout.Arrange(view, FloorSheet.Default).CarPages.SelectMany(page => page).Select(car => car.Car.Id);

        Assert.Equal(view.Cars.Select(car => car.Id), shown);
    }

    [Fact]
    public void Whole_words_only_unless_a_word_is_wider_than_the_line()
    {
        Gen.Select(Text, Gen.Double[60, 500]).Sample((text, width) =>
        {
            var lines = FloorText.Lines(text, width, 38, false, 2);
            var words = text.Split(' ').Append("…").ToHashSet();
            var isBroken = text.Split(' ').Any(word => FloorFace.Width(word, 38, false) > width);
            return lines.All(line => FloorFace.Width(line, 38, false) <= width)
                && (isBroken || lines.SelectMany(line => line.Split(' ')).All(words.Contains));
        });
    }

    [Fact]
    public void Too_wide_a_word_breaks_between_consonants()
    {
        var lines = FloorText.Lines("Crossmember", 180, 38, false, 2);

        Assert.Equal(["Cross-", "member"], lines);
    }

    private static Gen<FloorView> View => Gen.Select(
        Gen.Int[1, 4], Gen.Int[1, 3], Place.Array[12], Gen.Double[8, 40], Gen.Double[8, 25], Stop.Array[0, 4], Car.Array[0, 9],
        (columns, rows, places, width, depth, stops, cars) => new FloorView
        {
            Stamp = "s",
            ShopName = "Shop",
            At = DateTimeOffset.UnixEpoch,
            Shop = new(0, 0, width, depth),
            Gear = [new() { Id = "g", Name = "Gantry", OnRails = true, Sweep = new(0, depth * 0.1, width * 0.7, depth * 0.5), KeepOut = new(width * 0.1, depth * 0.1, width * 0.3, depth * 0.5) }],
            Places = [.. places.Take(columns * rows).Select((place, at) => place with { Id = $"p{at}", Area = Cell(at, columns, rows, width, depth) })],
            Stops = [.. stops.Select((stop, at) => stop with { Id = $"s{at}" })],
            Cars = [.. cars.Select((car, at) => car with { Id = $"c{at}" })],
        });

    private static Gen<FloorPlace> Place => Gen.Select(Text, Gen.Bool, Text.Array[0, 2], Text.Array[0, 3], Text.Array[0, 3]).Select(
        (name, isBay, dangers, tasks, nexts) => new FloorPlace
        {
            Id = "p",
            Name = name,
            Kind = isBay ? FloorPlaceKind.Bay : FloorPlaceKind.Corner,
            Area = new(0, 0, 1, 1),
            Car = isBay ? name : null,
            Dangers = [.. dangers.Select((words, at) => new FloorDanger($"d{at}", words, [SafetySignKind.W015, SafetySignKind.W001]))],
            InHand = [.. tasks.Select((words, at) => new FloorTask { Id = $"t{at}", Name = words, People = ["Inga", "Sol"], Estimate = TimeSpan.FromHours(2) })],
            CanStart = [.. nexts.Select((words, at) => new FloorNext($"n{at}", words, "nobody on it"))],
        });

    private static Gen<FloorStop> Stop => Gen.Select(Text, Text, Gen.Int[0, 5]).Select((scope, why, silent) => new FloorStop
    {
        Id = "s",
        Scope = scope,
        Why = why,
        RaisedBy = "Noor",
        RaisedAt = DateTimeOffset.UnixEpoch,
        State = StopState.ToldToStop,
        NotHeard = [.. Enumerable.Repeat("Mirek", silent)],
        Touches = 6,
    });

    private static Gen<FloorCar> Car => Gen.Select(Text, Text).Select((name, wait) => new FloorCar
    {
        Id = "c",
        Name = name,
        Stage = "lift",
        Date = new(FloorDateKind.Earliest, DateTimeOffset.UnixEpoch, Moved: "+1 d"),
        WaitsOn = wait,
    });

    private static FloorArea Cell(int at, int columns, int rows, double width, double depth)
    {
        var (w, d) = (width / columns, depth / rows);
        return new((at % columns * w) + (w * 0.05), (at / columns * d) + (d * 0.05), w * 0.9, d * 0.9);
    }

    private static void Check(FloorDrawing drawing)
    {
        foreach (var place in drawing.Places)
        {
            Assert.All(Boxes(place), box => Assert.True(place.Room.Contains(box) && drawing.Walls.Contains(box)));
            foreach (var page in place.Pages)
            {
                var boxes = Boxes(page).ToList();
                for (var at = 0; at < boxes.Count; at++)
                    Assert.DoesNotContain(boxes.Skip(at + 1), boxes[at].Overlaps);
            }
        }
        for (var at = 0; at < drawing.Places.Length; at++)
            Assert.DoesNotContain(drawing.Places.Skip(at + 1), other => Boxes(other).Any(box => Boxes(drawing.Places[at]).Any(box.Overlaps)));
        CheckBeside(drawing);
    }

    private static void CheckBeside(FloorDrawing drawing)
    {
        var bars = drawing.Gear.SelectMany(gear => gear.Rails).ToList();
        var written = drawing.Places.SelectMany(place => place.Pages).SelectMany(page => page).SelectMany(block => block.Rows).Select(row => row.Box);
        Assert.All(written, box => Assert.DoesNotContain(bars, box.Overlaps));
        foreach (var line in drawing.CarPages.SelectMany(page => page).SelectMany(car => car.Lines))
            Assert.True(Width(line, drawing.Sheet) <= FloorSheet.Side);
        foreach (var line in drawing.StopPages.SelectMany(page => page).SelectMany(stop => stop.Lines))
            Assert.True(Width(line, drawing.Sheet) <= FloorSheet.Width - (2 * FloorSheet.Margin));
    }

    private static IEnumerable<FloorBox> Boxes(FloorPlaceDrawing place) => place.Pages.SelectMany(page => Boxes(page));

    private static IEnumerable<FloorBox> Boxes(IEnumerable<FloorBlock> blocks) =>
        blocks.SelectMany(block => block.Rows.Select(row => row.Box).Concat(block.Marks.Select(mark => mark.Box)));

    private static double Width(FloorCarLine line, FloorSheet sheet) =>
        Width(line.Text, line.Style, sheet) + (line.Right is null ? 0 : Width(line.Right, line.RightStyle, sheet));

    private static double Width(string text, FloorStyle style, FloorSheet sheet) =>
        FloorFace.Width(text, style == FloorStyle.Name ? sheet.NamesType : sheet.RestType, style == FloorStyle.Name);
}
