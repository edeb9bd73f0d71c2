using Mastwright.Pictures.Drawings;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Tiles;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;

namespace Mastwright.Workbench.Api;

/// <summary>Tiles of the plan's ground. Their addresses may carry the ground's hash ("?ground=…"): then a browser may keep them for good.</summary>
internal static class TileEndpoints
{
    internal static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/tiles/heights/{zoom:int}/{x:int}/{y:int}.png", Heights)
            .Picture("image/png", "Heights of a web map tile, 256 pixels a side: metres = red × 256 + green + blue / 256 − 32768; 0 m where nothing is known.");
        api.MapGet("/tiles/{kind:regex(^(land|ground)$)}/{theme}/{zoom:int}/{x:int}/{y:int}.jpg", Picture)
            .Picture("image/jpeg", "The ground of a web map tile, 512 pixels a side: land is water, trees and houses, hatched where no height is known; ground is the same in the light on its slopes. The theme is light or dark.");
        api.MapGet("/tiles/relief/{theme}/{zoom:int}/{x:int}/{y:int}.png", Relief)
            .Picture("image/png", "The light on the slopes of a web map tile, 512 pixels a side, for laying over another map. The theme is light or dark.");
    }

    private static IResult Heights(PlanDesk desk, HttpContext context, int zoom, int x, int y, string? ground) =>
        Tile(desk, context, new(zoom, x, y), "h", "image/png", ground, (tiles, tile) => tiles.HeightPng(tile));

    private static IResult Picture(PlanDesk desk, HttpContext context, string kind, string theme, int zoom, int x, int y, string? ground) =>
        Drawn(desk, context, kind == "land" ? PictureKind.Land : PictureKind.Ground, theme, new(zoom, x, y), ground);

    private static IResult Relief(PlanDesk desk, HttpContext context, string theme, int zoom, int x, int y, string? ground) =>
        Drawn(desk, context, PictureKind.Relief, theme, new(zoom, x, y), ground);

    private static IResult Drawn(PlanDesk desk, HttpContext context, PictureKind kind, string theme, TileAddress tile, string? ground) => theme is "light" or "dark"
        ? Tile(desk, context, tile, $"{kind}-{theme}", kind == PictureKind.Relief ? "image/png" : "image/jpeg", ground, (tiles, one) => tiles.Picture(one, kind, theme == "dark" ? Theme.Dark : Theme.Light))
        : ApiAnswer.Wrong("the theme is light or dark");

    private static IResult Tile(PlanDesk desk, HttpContext context, TileAddress tile, string kind, string mediaType, string? ground, Func<GroundTiles, TileAddress, byte[]> make)
    {
        if (!tile.Exists)
        {
            return ApiAnswer.Wrong($"there is no tile {tile}; zooms go from 0 to {TileAddress.MostZoom}");
        }

        return ApiAnswer.Of(desk, (view, _) =>
        {
            EntityTagHeaderValue tag = new($"\"{kind}-{view.GroundHash}-{tile.Zoom}-{tile.X}-{tile.Y}\"");
            context.Response.Headers.CacheControl = ground == view.GroundHash ? "private, max-age=31536000, immutable" : "private, no-cache";
            // What the browser has already is not made again only to be found the same.
            bool isHeld = context.Request.GetTypedHeaders().IfNoneMatch.Any(held => held.Compare(tag, useStrongComparison: false));
            context.Response.Headers.ETag = tag.ToString();
            return isHeld ? Results.StatusCode(StatusCodes.Status304NotModified) : Results.Bytes(make(view.Tiles!, tile), mediaType);
        });
    }
}
