import sharp from 'sharp';
const [,, inp, out, l, t, w, h] = process.argv; await sharp(inp).extract({left:+l,top:+t,width:+w,height:+h}).toFile(out);
